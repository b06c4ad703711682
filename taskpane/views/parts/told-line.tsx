import { mergeClasses } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { usePane } from "../pane-context";

/** How the last thing done ended. The region is always there, so that screen readers hear it change. */
export function ToldLine() {
  const { told } = usePane().state;
  const styles = useStyles();
  const stopped = told?.tone === "stopped";
  return (
    <div role="status" aria-live="polite" aria-atomic="true">
      {told && (
        <p className={mergeClasses(styles.told, stopped && styles.toldStopped)}>
          {stopped && <span className={styles.toldWord}>Not done. </span>}
          {told.text}
        </p>
      )}
    </div>
  );
}
