import { Button, mergeClasses } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { moreRows, moreSentences } from "../../words/release";
import type { PreviewRow, ReleasedPreview } from "../../worker/release/released";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { Figure } from "./figure";
import { useParts } from "./use-parts";

/** One table as it leaves, with the words that go with it. */
export function PreviewTable({ table, index }: { table: ReleasedPreview; index: number }) {
  const { actions } = usePane();
  const styles = useStyles();
  const rows = useParts(table.rows, table.counts.rows, (from) => actions.releaseRows(index, from));
  return (
    <>
      <h3 className={styles.smallTitle}>{table.name}</h3>
      <p className={styles.quiet}>
        {table.title}. {table.population}.
      </p>
      {table.counts.rows === 0 ? (
        <p className={styles.sentence}>It has no rows on that day.</p>
      ) : (
        <Rows table={table} rows={rows.parts} />
      )}
      {rows.hidden > 0 && (
        <Button size="small" appearance="subtle" onClick={rows.more}>
          {moreRows(rows.hidden)}
          <span className={styles.hidden}> of {table.name}</span>
        </Button>
      )}
      <Words table={table} index={index} />
    </>
  );
}

/** Wide tables scroll in their own frame, by keyboard too, and keep their names in sight. */
function Rows({ table, rows }: { table: ReleasedPreview; rows: readonly PreviewRow[] }) {
  const styles = useStyles();
  return (
    <div className={styles.scroll} tabIndex={0} role="region" aria-label={`The table ${table.name}, as it leaves`}>
      <table className={mergeClasses(styles.table, styles.figures)}>
        <caption className={styles.hidden}>{table.title}</caption>
        <thead>
          <tr>
            <th scope="col">{table.named}</th>
            {table.headings.map((heading) => (
              <th key={heading} scope="col">
                <span>{heading}</span>
              </th>
            ))}
          </tr>
        </thead>
        {groupsOf(rows).map(({ group, from, members }) => (
          <tbody key={from}>
            {group !== "" && (
              <tr>
                <th colSpan={table.headings.length + 1} scope="rowgroup">
                  <span>{group}</span>
                </th>
              </tr>
            )}
            {members.map(({ name, figures }, row) => (
              <tr key={row}>
                <th scope="row">{name}</th>
                {figures.map((text, at) => (
                  <Figure key={at} text={text} />
                ))}
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </div>
  );
}

interface Group {
  readonly group: string;
  readonly from: number;
  readonly members: PreviewRow[];
}

/** Rows that follow one another and have the rest of their names in common. */
function groupsOf(rows: readonly PreviewRow[]): Group[] {
  const groups: Group[] = [];
  rows.forEach((row, from) => {
    const last = groups.at(-1);
    if (last?.group === row.group) last.members.push(row);
    else groups.push({ group: row.group, from, members: [row] });
  });
  return groups;
}

function Words({ table, index }: { table: ReleasedPreview; index: number }) {
  const { actions } = usePane();
  const styles = useStyles();
  const { counts, sentences, footnote, method, notes } = table;
  const said = useParts(sentences, counts.sentences, (from) => actions.releaseSentences(index, from));
  return (
    <>
      {counts.sentences > 0 && (
        <Disclosure summary={`The figures of ${table.name} in sentences`}>
          <ul className={styles.plainList}>
            {said.parts.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          {said.hidden > 0 && (
            <Button size="small" appearance="subtle" onClick={said.more}>
              {moreSentences(said.hidden)}
            </Button>
          )}
        </Disclosure>
      )}
      <Disclosure summary={`Footnote and method of ${table.name}`}>
        <p className={styles.sentence}>{footnote}</p>
        <p className={styles.sentence}>{method}</p>
        {notes.map((note) => (
          <p key={note} className={styles.sentence}>
            {note}
          </p>
        ))}
      </Disclosure>
    </>
  );
}
