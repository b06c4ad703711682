import { Button } from "@fluentui/react-components";
import { useRef, useState } from "react";
import { useStyles } from "../../look/styles";
import { usePane } from "../pane-context";
import { Messages } from "../parts/messages";

/** Decisions travel to another workbook, or to the command line, as a file that the user keeps. */
export function DecisionsFile() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const picker = useRef<HTMLInputElement>(null);
  const [messages, setMessages] = useState<readonly string[]>([]);
  const take = (file: File | undefined) => {
    if (file) void file.text().then(actions.takeOverDecisions).then(setMessages);
  };
  return (
    <>
      <p className={styles.sentence}>
        A new quarter in a new workbook: save the decisions here, and take them over there.
      </p>
      <div className={styles.actions}>
        <Button size="small" disabledFocusable={state.decisions.list.length === 0} onClick={actions.saveDecisionsFile}>
          Save the decisions as a file
        </Button>
        <Button size="small" onClick={() => picker.current?.click()}>
          Take over decisions from a file
        </Button>
        <input
          ref={picker}
          type="file"
          accept=".json,application/json"
          hidden
          aria-label="File of decisions"
          onChange={(event) => take(event.target.files?.[0])}
        />
      </div>
      <Messages messages={messages} />
    </>
  );
}
