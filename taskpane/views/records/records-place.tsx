import { Button } from "@fluentui/react-components";
import { useRef } from "react";
import { useStyles } from "../../look/styles";
import { openIn } from "../../state/understanding";
import { countsInWords, nextStep, recordsTitle, SAVED_EARLIER } from "../../words/records";
import { usePane } from "../pane-context";
import { Corrections } from "./corrections";
import { HowRead } from "./how-read";
import { OpenCorrections } from "./open-corrections";
import { Problems } from "./problems";
import { Questions } from "./questions";
import { TablesFound } from "./tables-found";

/** How the workbook is understood, what only a person can say, what was left out, and the one next step. */
export function RecordsPlace() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { found, understanding } = state;
  const asked = useRef<HTMLDivElement>(null);
  const answer = () => asked.current?.querySelector<HTMLElement>("select")?.focus();
  return (
    <>
      <h1 className={styles.title}>{recordsTitle(found)}</h1>
      {found && <p className={styles.lead}>{countsInWords(found.counts)}</p>}
      <Next onAnswer={answer} />
      {understanding && (
        <div ref={asked}>
          <Questions understanding={understanding} />
        </div>
      )}
      {understanding && <HowRead understanding={understanding} />}
      {found && <Problems found={found} />}
      {found && <TablesFound found={found} />}
      <Corrections />
      <div className={styles.lastActions}>
        {found && (
          <Button size="small" disabledFocusable={state.job !== null} onClick={actions.read}>
            Read the workbook again
          </Button>
        )}
        <Button size="small" disabledFocusable={state.job !== null} onClick={actions.saveTemplate}>
          Get an empty workbook
        </Button>
      </div>
    </>
  );
}

/** One button, whatever the state of things. */
function Next({ onAnswer }: { onAnswer: () => void }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { found, foundIsOld, job } = state;
  const step = nextStep({
    isRead: found !== null,
    isOld: foundIsOld,
    failure: found?.failure ?? null,
    open: openIn(state),
  });
  // Nothing was settled for this workbook: a file of an earlier quarter would answer most of it.
  const isNew = found !== null && step.does !== "quarter" && state.decisions.list.length === 0;
  const act = {
    read: () => actions.read(),
    answer: onAnswer,
    confirm: () => actions.confirm(),
    quarter: () => actions.openPlace("quarter"),
  };
  return (
    <>
      <p className={styles.lead}>{step.why}</p>
      <div className={styles.actions}>
        <Button appearance="primary" disabledFocusable={job !== null} onClick={act[step.does]}>
          {step.label}
        </Button>
        {isNew && <OpenCorrections label="Use corrections saved earlier" />}
      </div>
      {isNew && <p className={styles.quiet}>{SAVED_EARLIER}</p>}
    </>
  );
}
