import { Button } from "@fluentui/react-components";
import { useRef, useState } from "react";
import { useStyles } from "../../look/styles";
import { CORRECTIONS_FILE_ABOUT } from "../../words/decisions";
import { usePane } from "../pane-context";
import { Messages } from "../parts/messages";

/** All that was settled travels to another workbook, or to the command line, as a file that the user keeps. */
export function CorrectionsFile() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const isThere = state.decisions.list.length > 0;
  const picker = useRef<HTMLInputElement>(null);
  const [messages, setMessages] = useState<readonly string[]>([]);
  const take = (file: File | undefined) => {
    if (file) void file.text().then(actions.openCorrections).then(setMessages);
  };
  return (
    <>
      <p className={styles.quiet}>{CORRECTIONS_FILE_ABOUT}</p>
      <div className={styles.actions}>
        <Button size="small" disabledFocusable={!isThere} onClick={actions.saveCorrections}>
          Save my corrections
        </Button>
        <Button size="small" onClick={() => picker.current?.click()}>
          Open my corrections
        </Button>
        <input
          ref={picker}
          type="file"
          accept=".json,application/json"
          hidden
          aria-label="File of corrections"
          onChange={(event) => take(event.target.files?.[0])}
        />
      </div>
      <Messages messages={messages} />
    </>
  );
}
