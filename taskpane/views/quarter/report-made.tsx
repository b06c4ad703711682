import { Button } from "@fluentui/react-components";
import { useEffect, useRef, useState } from "react";
import { useStyles } from "../../look/styles";
import { INTERNAL_WARNING } from "../../words/tables";
import { followedInWords } from "../../words/report";
import type { Made, MadeFinding, MadeTable } from "../../worker/report/made";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { LeftOut } from "../parts/left-out";
import { Section } from "../parts/section";
import { Figures } from "./figures";
import { ChartFigure } from "./chart-figure";

/** The five findings of the report's first page, and what can be done with the report. */
export function ReportMade({ made }: { made: Made }) {
  const styles = useStyles();
  const start = useRef<HTMLDivElement>(null);
  // Where there is nothing to draw, the sentences of the tables are what there is to say.
  const [open, setOpen] = useState(made.findings.every(({ chart }) => chart === null));
  useEffect(() => start.current?.focus(), [made]);
  const firstDrawn = made.findings.findIndex(({ chart }) => chart !== null);
  return (
    <div
      ref={start}
      tabIndex={-1}
      role="group"
      aria-label={`The report as of ${made.label}`}
      className={styles.unringed}
    >
      <LeftOut />
      <Section title="What the report says" about={followedInWords(made)}>
        <Actions made={made} />
        {made.findings.map((finding, index) => (
          <OneFinding key={finding.id} finding={finding} index={index} isFirst={index === firstDrawn} />
        ))}
        <Disclosure summary="What each table says" open={open} onOpen={setOpen}>
          {made.tables.map((table) => (
            <Said key={table.id} table={table} />
          ))}
        </Disclosure>
        <p className={styles.quiet}>{CAUTION}</p>
      </Section>
    </div>
  );
}

const CAUTION = "These figures describe a program, not a diagnosis; for any child, talk with the child’s clinician.";

function Actions({ made }: { made: Made }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const busy = state.job !== null;
  const first = state.receipts.find(({ sheets }) => sheets.includes(made.firstSheet));
  return (
    <div className={styles.actions}>
      {first && (
        <Button appearance="primary" onClick={() => actions.showCell(made.firstSheet, "A1")}>
          Open the report
        </Button>
      )}
      <Button disabledFocusable={busy} onClick={actions.saveReport}>
        Save the report
      </Button>
      <Button disabledFocusable={busy} onClick={actions.saveNumbers}>
        Save its numbers for next quarter
      </Button>
    </div>
  );
}

/** The first picture is there at once; the others open on their sentence. */
function OneFinding({ finding, index, isFirst }: { finding: MadeFinding; index: number; isFirst: boolean }) {
  const styles = useStyles();
  const { headline, below, chart } = finding;
  return (
    <section className={styles.entry} aria-label={headline}>
      <h3 className={styles.entryTitle}>{headline}</h3>
      {below.map((line) => (
        <p key={line} className={styles.quiet}>
          {line}
        </p>
      ))}
      {chart && <Chart chart={chart} index={index} isOpen={isFirst} />}
      {finding.figures.length > 0 && <Figures figures={finding.figures} finding={index} />}
    </section>
  );
}

function Chart(props: { chart: NonNullable<MadeFinding["chart"]>; index: number; isOpen: boolean }) {
  const { chart, index, isOpen } = props;
  const [open, setOpen] = useState(isOpen);
  return (
    <Disclosure summary="Chart" open={open} onOpen={setOpen}>
      {open && <ChartFigure chart={chart} index={index} />}
    </Disclosure>
  );
}

function Said({ table }: { table: MadeTable }) {
  const styles = useStyles();
  return (
    <>
      <h3 className={styles.smallTitle}>{table.name}</h3>
      {table.internal && <p className={styles.quiet}>{INTERNAL_WARNING}</p>}
      {table.sentences.map((sentence) => (
        <p key={sentence} className={styles.sentence}>
          {sentence.endsWith(".") ? sentence : `${sentence}.`}
        </p>
      ))}
    </>
  );
}
