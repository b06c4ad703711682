import { Button } from "@fluentui/react-components";
import { useRef } from "react";
import { useStyles } from "../../look/styles";
import type { LastFile } from "../../state/pane-state";
import { FROM_A_REPORT, LAST_ABOUT, lastHint, lastInWords } from "../../words/last-quarter";
import type { Compared, MadeAgain } from "../../worker/last/last";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { TextField } from "../parts/fields";
import { Section } from "../parts/section";
import { ChartFigure } from "./chart-figure";

/** Last quarter's workbook or report: why the figures moved, and whether the report can be made again. */
export function LastQuarter() {
  const { made, last } = usePane().state.quarter;
  const { file, compared, again } = last;
  const styles = useStyles();
  if (made !== null && file === null) {
    return (
      <Disclosure summary={TITLE}>
        <p className={styles.quiet}>{LAST_ABOUT}</p>
        <Choose file={file} />
      </Disclosure>
    );
  }
  return (
    <Section title={TITLE} about={LAST_ABOUT}>
      <Choose file={file} />
      {file && <Ask file={file} />}
      {again && !again.isSame && <NotTheSame again={again} />}
      {compared && <Bridges compared={compared} />}
    </Section>
  );
}

const TITLE = "Compare with last quarter’s workbook";

function Choose({ file }: { file: LastFile | null }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const picker = useRef<HTMLInputElement>(null);
  const busy = state.job !== null;
  const take = (input: HTMLInputElement) => {
    const chosen = input.files?.[0];
    if (chosen) actions.chooseLast(chosen);
    // The same file may be chosen again once it was mended.
    input.value = "";
  };
  return (
    <>
      {file && (
        <p role="status" className={styles.sentence}>
          {lastInWords(file)}
        </p>
      )}
      <div className={styles.actions}>
        <Button size="small" disabledFocusable={busy} onClick={() => picker.current?.click()}>
          {file ? "Choose another file" : "Choose the file"}
        </Button>
        {file && (
          <Button size="small" appearance="subtle" disabledFocusable={busy} onClick={actions.leaveLast}>
            Leave it out
          </Button>
        )}
        <input
          ref={picker}
          type="file"
          accept=".xlsx,.xlsm,.json,application/json"
          hidden
          aria-label="File of last quarter"
          onChange={(event) => take(event.currentTarget)}
        />
      </div>
    </>
  );
}

function Ask({ file }: { file: LastFile }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const busy = state.job !== null;
  const hint = lastHint(file);
  return (
    <>
      {hint && <p className={styles.quiet}>{hint}</p>}
      {file.kind === "workbook" && (
        <div className={styles.fields}>
          <TextField
            type="date"
            label="Day of last quarter’s figures"
            value={state.quarter.last.asOf}
            onChange={actions.enterLastDay}
          />
        </div>
      )}
      <div className={styles.actions}>
        {file.kind !== "report workbook" && (
          <Button appearance="primary" disabledFocusable={busy} onClick={actions.compare}>
            Compare
          </Button>
        )}
        {file.kind !== "workbook" && (
          <Button disabledFocusable={busy} onClick={actions.repeatLast}>
            Make it again
          </Button>
        )}
      </div>
    </>
  );
}

function NotTheSame({ again }: { again: MadeAgain }) {
  const styles = useStyles();
  return (
    <div className={styles.boxed} role="group" aria-label="What differs">
      {again.lines.map((line, at) => (
        <p key={at} className={styles.sentence}>
          {line}
        </p>
      ))}
    </div>
  );
}

/** The children, all skill checks, those met; what follows are the areas. */
const HEADLINES = 3;

function Bridges({ compared }: { compared: Compared }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { bridges, isFromReport, days } = compared;
  const busy = state.job !== null;
  return (
    <div role="group" aria-label={`From ${days.earlier} to ${days.later}`}>
      <h3 className={styles.smallTitle}>
        From {days.earlier} to {days.later}
      </h3>
      {state.quarter.last.isOld && <p className={styles.quiet}>{OLD}</p>}
      {isFromReport && <p className={styles.quiet}>{FROM_A_REPORT}</p>}
      {bridges.slice(0, HEADLINES).map(({ sentence, chart }, at) => (
        <OneBridge key={sentence} sentence={sentence} chart={chart} index={at} />
      ))}
      {bridges.length > HEADLINES && (
        <Disclosure summary="Area by area">
          {bridges.slice(HEADLINES).map(({ sentence, chart }, at) => (
            <OneBridge key={sentence} sentence={sentence} chart={chart} index={HEADLINES + at} />
          ))}
        </Disclosure>
      )}
      <div className={styles.actions}>
        <Button disabledFocusable={busy} onClick={actions.addComparison}>
          Add it to the workbook
        </Button>
        <Button disabledFocusable={busy} onClick={actions.saveComparison}>
          Save it
        </Button>
      </div>
    </div>
  );
}

const OLD = "A cell, a setting or a correction changed since. Compare again to see what it changes.";

function OneBridge({ sentence, chart, index }: Compared["bridges"][number] & { index: number }) {
  const styles = useStyles();
  return (
    <>
      <p className={styles.sentence}>{sentence}</p>
      <Disclosure summary="Chart">
        <ChartFigure chart={chart} index={index} of="comparison" />
      </Disclosure>
    </>
  );
}
