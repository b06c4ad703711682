import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { CORRECTIONS_FILE_ABOUT } from "../../words/decisions";
import { usePane } from "../pane-context";
import { OpenCorrections } from "./open-corrections";

/** All that was settled travels to another workbook, or to the command line, as a file that the user keeps. */
export function CorrectionsFile() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const isThere = state.decisions.list.length > 0;
  return (
    <>
      <p className={styles.quiet}>{CORRECTIONS_FILE_ABOUT}</p>
      <div className={styles.actions}>
        <Button size="small" disabledFocusable={!isThere} onClick={actions.saveCorrections}>
          Save my corrections
        </Button>
        <OpenCorrections label="Open my corrections" />
      </div>
    </>
  );
}
