import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { IN_EXCEL_ABOUT, LEDGER_TO_SAVE, OPENING_WARNING, SAVE_ABOUT } from "../../words/release";
import type { ReleaseFormat } from "../../worker/release/released";
import { usePane } from "../pane-context";
import { Section } from "../parts/section";

const FILES: readonly { readonly format: ReleaseFormat; readonly label: string }[] = [
  { format: "xlsx", label: "Save as .xlsx" },
  { format: "csv", label: "Save as CSV, in a .zip" },
  { format: "svg", label: "Save pictures (SVG), in a .zip" },
];

/** The files, each scanned before it is handed over, and the ledger beside them. */
export function SaveRelease() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { isOld, isSaved } = state.release;
  const still = state.job !== null || isOld;
  return (
    <Section title="Save" about={SAVE_ABOUT}>
      <div className={styles.actions}>
        {FILES.map(({ format, label }) => (
          <Button
            key={format}
            size="small"
            appearance={format === "xlsx" && !isSaved && !isOld ? "primary" : "secondary"}
            disabledFocusable={still}
            onClick={() => actions.saveRelease(format, "file")}
          >
            {label}
          </Button>
        ))}
      </div>
      {actions.hostKind === "excel" && <OpenInExcel still={still} />}
      <div className={styles.boxed}>
        <p className={styles.sentence}>{LEDGER_TO_SAVE}</p>
        <Button
          size="small"
          appearance={isSaved && !isOld ? "primary" : "secondary"}
          disabledFocusable={still}
          onClick={actions.saveLedger}
        >
          Save the release log
        </Button>
      </div>
    </Section>
  );
}

function OpenInExcel({ still }: { still: boolean }) {
  const { actions } = usePane();
  const styles = useStyles();
  return (
    <div className={styles.boxed}>
      <p className={styles.sentence}>
        {IN_EXCEL_ABOUT} {OPENING_WARNING}
      </p>
      <Button size="small" disabledFocusable={still} onClick={() => actions.saveRelease("xlsx", "opened")}>
        Open as a new workbook
      </Button>
    </div>
  );
}
