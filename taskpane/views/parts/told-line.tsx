import { Button, mergeClasses } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { usePane } from "../pane-context";

/** How the last thing done ended. The region is always there, so that screen readers hear it change. */
export function ToldLine() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { told } = state;
  const stopped = told?.tone === "stopped";
  return (
    <div className={told ? mergeClasses(styles.told, styles.toldRow, stopped && styles.toldStopped) : undefined}>
      <div role="status" aria-atomic="true" className={styles.toldText}>
        {told && stopped && <strong>Not done. </strong>}
        {told?.text}
      </div>
      {told && (
        <Button size="small" appearance="subtle" onClick={actions.dismiss}>
          Close <span className={styles.hidden}>this message</span>
        </Button>
      )}
    </div>
  );
}
