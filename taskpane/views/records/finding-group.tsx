import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { cellsInWords } from "../../words/records";
import type { FindingGroup, RecordsFound } from "../../worker/records/found";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { RepairForm } from "./repair-form";
import { ShowCell } from "./show-cell";

/** One rule in one table: what it looks for, what to do, the cells, and the decision that would settle it. */
export function FindingGroupView(props: { group: FindingGroup; index: number; skills: RecordsFound["skills"] }) {
  const { group, index, skills } = props;
  const styles = useStyles();
  const placed = group.cells.some(({ cell }) => cell !== "");
  return (
    <Disclosure
      summary={
        <>
          {group.explanation}
          <span className={styles.under}>
            {group.table}
            {placed && <> · {cellsInWords(group.count)}</>}
          </span>
        </>
      }
    >
      <p className={styles.sentence}>Expected: {group.expected}.</p>
      <p className={styles.sentence}>{group.advice}</p>
      {placed && <Cells group={group} index={index} />}
      {group.repair && <RepairForm repair={group.repair} skills={skills} />}
      <p className={styles.quiet}>Rule: {group.rule}</p>
    </Disclosure>
  );
}

function Cells({ group, index }: { group: FindingGroup; index: number }) {
  const { actions } = usePane();
  const styles = useStyles();
  const hidden = group.count - group.cells.length;
  return (
    <>
      <ul className={styles.cellList} aria-label="Cells">
        {group.cells.map(({ sheet, cell, advice }) => (
          <li key={`${sheet} ${cell}`} className={advice === null ? undefined : styles.wholeLine}>
            {advice !== null && <p className={styles.sentence}>{advice}</p>}
            {cell !== "" && <ShowCell sheet={sheet} cell={cell} />}
          </li>
        ))}
      </ul>
      {hidden > 0 && (
        <div className={styles.actions}>
          <Button size="small" appearance="subtle" onClick={() => actions.moreCells(index)}>
            List more: {cellsInWords(hidden)} not listed yet
          </Button>
        </div>
      )}
    </>
  );
}
