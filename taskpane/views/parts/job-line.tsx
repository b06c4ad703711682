import { Button, ProgressBar } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import type { JobKind } from "../../state/pane-state";
import { stepInWords } from "../../words/report";
import { usePane } from "../pane-context";

const NAMES: Readonly<Record<JobKind, string>> = {
  reading: "Reading",
  building: "Making the report",
  comparing: "Comparing with last quarter",
  repeating: "Making the report again",
  listing: "Listing the children",
  adding: "Adding the page",
  removing: "Removing",
  saving: "Saving",
  opening: "Opening the release log",
  preparing: "Preparing the release",
  trying: "Trying what would show more",
  checking: "Checking the text",
};

/** How far the running job is, and the way out of it. */
export function JobLine() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { job } = state;
  if (!job) return null;
  const step = stepInWords(job, (id) => state.choices.tables.find((each) => each.id === id)?.name ?? id);
  const { done, of } = job.progress ?? { done: 0, of: 0 };
  return (
    <div className={styles.told}>
      <div role="status">{step}</div>
      <ProgressBar aria-label={NAMES[job.kind]} aria-valuetext={step} {...(of > 0 ? { value: done, max: of } : {})} />
      {job.kind !== "removing" && (
        <div className={styles.actions}>
          <Button size="small" onClick={actions.cancel} disabledFocusable={job.cancelling}>
            Cancel
          </Button>
          <span className={styles.caption}>or press Esc</span>
        </div>
      )}
    </div>
  );
}
