import { Button } from "@fluentui/react-components";
import { useRef } from "react";
import { useStyles } from "../../look/styles";
import { LEDGER_ABOUT, ledgerInWords } from "../../words/release";
import { Lines } from "./lines";
import { usePane } from "../pane-context";
import { Section } from "../parts/section";

/** The ledger of earlier releases, which the user picks. */
export function Ledger() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const picker = useRef<HTMLInputElement>(null);
  const { ledger } = state.release;
  const busy = state.job !== null;
  const take = (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (file) actions.openLedger(file);
    // The same file may be picked again once it was mended.
    input.value = "";
  };
  return (
    <Section title="What was released before" about={LEDGER_ABOUT}>
      <p role="status" className={styles.sentence}>
        {ledger ? ledgerInWords(ledger) : "No release log is open. A first release has none yet."}
      </p>
      {ledger && <Lines lines={ledger.lines} what="release" />}
      <div className={styles.actions}>
        <Button size="small" disabledFocusable={busy} onClick={() => picker.current?.click()}>
          {ledger ? "Open another release log" : "Open the release log"}
        </Button>
        {ledger && (
          <Button size="small" appearance="subtle" disabledFocusable={busy} onClick={actions.closeLedger}>
            Leave it out
          </Button>
        )}
        <input
          ref={picker}
          type="file"
          accept=".json,application/json"
          hidden
          aria-label="File of the release log"
          onChange={(event) => take(event.currentTarget)}
        />
      </div>
    </Section>
  );
}
