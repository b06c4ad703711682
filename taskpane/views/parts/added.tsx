import { Button } from "@fluentui/react-components";
import { useState } from "react";
import type { Receipt } from "../../../src/workbook/host";
import { useStyles } from "../../look/styles";
import { notListed, receiptTitle, unsureInWords } from "../../words/report";
import { usePane } from "../pane-context";
import { Section } from "./section";

/** What runs added and is still there, each to be taken away again. */
export function Added() {
  const { state, actions } = usePane();
  const { receipts, receiptsUnread } = state;
  const styles = useStyles();
  if (receipts.length === 0 && receiptsUnread === null) return null;
  return (
    <Section title="Added to this workbook">
      {receiptsUnread !== null && (
        <div role="status">
          <p className={styles.sentence}>{notListed(receiptsUnread)}</p>
          <Button size="small" disabledFocusable={state.job !== null} onClick={actions.listReceipts}>
            List again
          </Button>
        </div>
      )}
      <ul className={styles.list}>
        {receipts.map((receipt) => (
          <OneReceipt key={receipt.sheets.join("/")} receipt={receipt} />
        ))}
      </ul>
    </Section>
  );
}

function OneReceipt({ receipt }: { receipt: Receipt }) {
  const styles = useStyles();
  return (
    <li className={styles.entry}>
      <p className={styles.sentence}>
        <strong>{receiptTitle(receipt)}</strong>
      </p>
      <p className={styles.quiet}>{receipt.sheets.join(", ")}</p>
      {receipt.unsure && <p className={styles.sentence}>{unsureInWords(receipt.unsure)}</p>}
      {receipt.sheets.length > 0 && <Remove receipt={receipt} />}
    </li>
  );
}

/** Asked once more on the spot: what is on the sheets goes with them. */
function Remove({ receipt }: { receipt: Receipt }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const [asked, setAsked] = useState(false);
  const busy = state.job !== null;
  const ask = () => {
    actions.dismiss();
    setAsked(true);
  };
  if (!asked) {
    return (
      <Button size="small" disabledFocusable={busy} onClick={ask}>
        Remove what this run added
        <span className={styles.hidden}>: {receiptTitle(receipt)}</span>
      </Button>
    );
  }
  return (
    <div className={styles.boxed} role="group" aria-label={`Remove: ${receiptTitle(receipt)}`}>
      <p className={styles.sentence}>{GOES_TOO}</p>
      <div className={styles.actions}>
        <Button size="small" autoFocus onClick={() => setAsked(false)}>
          Keep the sheets
        </Button>
        <Button size="small" appearance="primary" disabledFocusable={busy} onClick={() => actions.remove(receipt)}>
          Remove the sheets
        </Button>
      </div>
    </div>
  );
}

const GOES_TOO =
  "Anything written on these sheets since goes with them. Your own sheets stay as they are. Remove them?";
