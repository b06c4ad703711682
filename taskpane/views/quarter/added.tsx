import {
  Button,
  Dialog,
  DialogActions,
  DialogBody,
  DialogContent,
  DialogSurface,
  DialogTitle,
  DialogTrigger,
} from "@fluentui/react-components";
import type { Receipt } from "../../../src/workbook/host";
import { useStyles } from "../../look/styles";
import { receiptTitle } from "../../words/report";
import { usePane } from "../pane-context";
import { Section } from "../parts/section";

/** What runs added and is still there, each to be taken away again. */
export function Added() {
  const { receipts } = usePane().state;
  const styles = useStyles();
  if (receipts.length === 0) return null;
  return (
    <Section title="Added to this workbook">
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
      <Remove receipt={receipt} />
    </li>
  );
}

function Remove({ receipt }: { receipt: Receipt }) {
  const { state, actions } = usePane();
  return (
    <Dialog modalType="alert">
      <DialogTrigger disableButtonEnhancement>
        <Button size="small" disabledFocusable={state.job !== null} aria-label={`Remove: ${receiptTitle(receipt)}`}>
          Remove what this run added
        </Button>
      </DialogTrigger>
      <DialogSurface>
        <DialogBody>
          <DialogTitle>Remove these sheets?</DialogTitle>
          <DialogContent>
            {receiptTitle(receipt)}. Anything written on these sheets since goes with them; your own sheets stay as they
            are.
          </DialogContent>
          <DialogActions fluid>
            <DialogTrigger disableButtonEnhancement>
              <Button>Keep them</Button>
            </DialogTrigger>
            <DialogTrigger disableButtonEnhancement>
              <Button appearance="primary" onClick={() => actions.remove(receipt)}>
                Remove
              </Button>
            </DialogTrigger>
          </DialogActions>
        </DialogBody>
      </DialogSurface>
    </Dialog>
  );
}
