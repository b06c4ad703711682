import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { notUsedInWords } from "../../words/records";
import { usePane } from "../pane-context";

/** Figures that leave rows out never stand without this sentence. */
export function LeftOut() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const sentence = notUsedInWords(state.found?.tables ?? []);
  if (sentence === null) return null;
  return (
    <div className={styles.toldRow}>
      <p className={styles.toldText}>{sentence}</p>
      <Button size="small" onClick={() => actions.openPlace("records")}>
        See why
      </Button>
    </div>
  );
}
