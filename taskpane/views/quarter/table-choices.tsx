import { Checkbox } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { INTERNAL_WARNING } from "../../words/tables";
import type { TableChoice } from "../../worker/records/found";
import { usePane } from "../pane-context";

export function TableChoices() {
  const { tables } = usePane().state.choices;
  const styles = useStyles();
  const internal = tables.filter((each) => each.internal);
  return (
    <>
      <fieldset className={styles.checks}>
        <legend className={styles.hidden}>Tables of the report</legend>
        {tables
          .filter((each) => !each.internal)
          .map((table) => (
            <OneTable key={table.id} table={table} />
          ))}
      </fieldset>
      {internal.length > 0 && (
        <fieldset className={styles.checks}>
          <legend className={styles.smallTitle}>Internal</legend>
          <p className={styles.quiet}>{INTERNAL_WARNING}</p>
          {internal.map((table) => (
            <OneTable key={table.id} table={table} />
          ))}
        </fieldset>
      )}
    </>
  );
}

function OneTable({ table }: { table: TableChoice }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  return (
    <Checkbox
      label={
        <>
          {table.name}
          <span className={styles.caption}> – {table.about}</span>
        </>
      }
      checked={state.quarter.tables.includes(table.id)}
      onChange={(_, { checked }) => actions.chooseTable(table.id, checked === true)}
    />
  );
}
