import { useStyles } from "../../look/styles";
import type { Made } from "../../worker/report/made";
import { Disclosure } from "../parts/disclosure";
import { Section } from "../parts/section";
import { ChartFigure } from "./chart-figure";
import { useState } from "react";

/** The charts of the report, each drawn when it is opened. */
export function Charts({ made }: { made: Made }) {
  const styles = useStyles();
  const sheets = [...new Set(made.charts.map(({ sheet }) => sheet))];
  return (
    <Section title="Charts" about="The same charts stand in the report. Each has its numbers beside it.">
      {sheets.map((sheet) => (
        <div key={sheet}>
          <h3 className={styles.smallTitle}>{sheet}</h3>
          {made.charts.map(
            (chart, index) => chart.sheet === sheet && <OneChart key={index} made={made} index={index} />,
          )}
        </div>
      ))}
    </Section>
  );
}

function OneChart({ made, index }: { made: Made; index: number }) {
  const [open, setOpen] = useState(false);
  const chart = made.charts[index];
  if (!chart) return null;
  return (
    <Disclosure summary={chart.title} open={open} onOpen={setOpen}>
      {open && <ChartFigure chart={chart} index={index} />}
    </Disclosure>
  );
}
