import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { LOST_ROWS } from "../../words/last-quarter";
import { usePane } from "../pane-context";

/** Rows that the last report had: a filter left on, or a sheet forgotten, is seen before a figure is made. */
export function RowsLost() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { lost } = state.quarter.last;
  if (lost.length === 0) return null;
  return (
    <div className={styles.boxed} role="group" aria-label="Rows that are missing">
      <p className={styles.sentence}>{LOST_ROWS}</p>
      <ul className={styles.plainList}>
        {lost.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
      <Button size="small" disabledFocusable={state.job !== null} onClick={actions.buildAnyway}>
        Make the report all the same
      </Button>
    </div>
  );
}
