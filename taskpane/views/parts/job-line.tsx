import { Button, ProgressBar } from "@fluentui/react-components";
import { useEffect, useRef } from "react";
import { useStyles } from "../../look/styles";
import type { JobKind } from "../../state/pane-state";
import { stepInWords } from "../../words/report";
import { usePane } from "../pane-context";

const NAMES: Readonly<Record<JobKind, string>> = {
  reading: "Reading",
  building: "Making the report",
  removing: "Removing",
  saving: "Saving",
};

/** How far the running job is, and the way out of it. */
export function JobLine() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { job } = state;
  const way = useFocusOnStart(job !== null);
  if (!job) return null;
  const step = stepInWords(job, (id) => state.choices.tables.find((each) => each.id === id)?.name ?? id);
  const { done, of } = job.progress ?? { done: 0, of: 0 };
  return (
    <div className={styles.told}>
      <div role="status">{step}</div>
      <ProgressBar aria-label={NAMES[job.kind]} aria-valuetext={step} {...(of > 0 ? { value: done, max: of } : {})} />
      {job.kind !== "removing" && (
        <div className={styles.actions} ref={way}>
          <Button onClick={actions.cancel} disabledFocusable={job.cancelling}>
            Cancel
          </Button>
        </div>
      )}
    </div>
  );
}

/** The button that started the job is gone or off: the keyboard goes on at the way out, unless it is elsewhere. */
function useFocusOnStart(running: boolean) {
  const way = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const nowhere = document.activeElement === null || document.activeElement === document.body;
    if (running && nowhere) way.current?.querySelector("button")?.focus();
  }, [running]);
  return way;
}
