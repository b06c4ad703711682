import { Button } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { PageSubject } from "../../../src/report/pages/make-page";
import { useStyles } from "../../look/styles";
import { usePane } from "../pane-context";

/** Adds a page as a sheet; the last one that was added can be saved as a file of its own. */
export function AddPage({ subject, children }: { subject: PageSubject; children: ReactNode }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { page } = state.caseload;
  const busy = state.job !== null;
  const isLast = page !== null && JSON.stringify(page.subject) === JSON.stringify(subject);
  return (
    <div className={styles.actions}>
      <Button size="small" disabledFocusable={busy} onClick={() => actions.addPage(subject)}>
        {children}
      </Button>
      {isLast && (
        <Button size="small" disabledFocusable={busy} onClick={actions.savePage}>
          Save that page as .xlsx
        </Button>
      )}
    </div>
  );
}
