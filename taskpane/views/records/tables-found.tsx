import { useStyles } from "../../look/styles";
import { leftOutInWords, rowsUsed } from "../../words/records";
import type { RecordsFound, TableFound } from "../../worker/records/found";
import { Disclosure } from "../parts/disclosure";
import { Section } from "../parts/section";
import { ShowCell } from "./show-cell";

export function TablesFound({ found }: { found: RecordsFound }) {
  if (found.tables.length === 0) return null;
  return (
    <Section title="Tables" about="Open a table to see what each of its headings means.">
      {found.tables.map((table) => (
        <OneTable key={`${table.sheet} ${table.address}`} table={table} />
      ))}
    </Section>
  );
}

function OneTable({ table }: { table: TableFound }) {
  const styles = useStyles();
  const leftOut = leftOutInWords(table);
  return (
    <Disclosure
      summary={
        <>
          <strong>{table.table}</strong> · {rowsUsed(table)}
        </>
      }
    >
      {leftOut !== "" && <p className={styles.sentence}>Left out: {leftOut}.</p>}
      <p className={styles.sentence}>
        <ShowCell sheet={table.sheet} cell={table.address} />
      </p>
      {table.wide && <p className={styles.sentence}>{WIDE}</p>}
      {table.columns.length > 0 && <Mapping table={table} />}
      {table.further.length > 0 && (
        <p className={styles.quiet}>
          {table.wide ? "Other headings" : table.table === "Children" ? "Can group the tables" : "Not read"}:{" "}
          {table.further.join(", ")}
        </p>
      )}
    </Disclosure>
  );
}

const WIDE = "A row for each child and a column for each skill.";

function Mapping({ table }: { table: TableFound }) {
  const styles = useStyles();
  return (
    <table className={styles.table}>
      <caption className={styles.hidden}>What the headings of {table.table} mean</caption>
      <thead>
        <tr>
          <th scope="col">Column</th>
          <th scope="col">Heading in the workbook</th>
          <th scope="col">Cell</th>
        </tr>
      </thead>
      <tbody>
        {table.columns.map(({ means, heading, cell, required }) => (
          <tr key={means}>
            <th scope="row">{means}</th>
            <td>{heading ?? (required ? "not found, and needed" : "not there")}</td>
            <td>{cell}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
