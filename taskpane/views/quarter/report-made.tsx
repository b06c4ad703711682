import { Button } from "@fluentui/react-components";
import { useEffect, useRef } from "react";
import { useStyles } from "../../look/styles";
import { INTERNAL_WARNING } from "../../words/tables";
import { followedInWords } from "../../words/report";
import type { Made, MadeTable } from "../../worker/report/made";
import { usePane } from "../pane-context";
import { Section } from "../parts/section";
import { Charts } from "./charts";

/** What the report says, most important first, and what can be done with it. */
export function ReportMade({ made }: { made: Made }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const start = useRef<HTMLDivElement>(null);
  useEffect(() => start.current?.focus(), [made]);
  return (
    <div
      ref={start}
      tabIndex={-1}
      role="group"
      aria-label={`The report as of ${made.label}`}
      style={{ outline: "none" }}
    >
      <Section title="What the records say" about={followedInWords(made)}>
        {made.tables.map((table) => (
          <Said key={table.id} table={table} />
        ))}
        <p className={styles.quiet}>{CAUTION}</p>
        <div className={styles.actions}>
          <Button disabledFocusable={state.job !== null} onClick={actions.saveReport}>
            Save the report as .xlsx
          </Button>
        </div>
      </Section>
      {made.charts.length > 0 && <Charts made={made} />}
    </div>
  );
}

const CAUTION =
  "Nothing here is a diagnosis. Talk with the child’s clinician about anything that gives cause for concern; local rules and licensed practice decide.";

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
