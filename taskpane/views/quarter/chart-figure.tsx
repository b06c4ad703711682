import { Spinner } from "@fluentui/react-components";
import { useEffect, useId, useRef, useState } from "react";
import { useStyles } from "../../look/styles";
import type { ChartPreview } from "../../worker/report/made";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { ChartLegend } from "./chart-legend";
import { NumbersTable } from "./numbers-table";
import { svgElement } from "./svg-element";

const WIDEST = 620;

/** A drawn chart: its message as text for those who do not see it, and its numbers as a table. */
export function ChartFigure(props: { chart: ChartPreview; index: number; of?: "report" | "comparison" }) {
  const { chart, index, of = "report" } = props;
  const styles = useStyles();
  const caption = useId();
  const { place, outcome } = useDrawing(of, index);
  return (
    <figure className={styles.figure}>
      <ChartLegend entries={chart.legend} />
      <div ref={place} role="img" aria-label={chart.title} aria-describedby={caption} />
      {outcome === "waiting" && <Spinner size="tiny" label="Drawing the chart" />}
      {outcome === "failed" && <p className={styles.sentence}>The chart could not be drawn; its numbers are below.</p>}
      <figcaption id={caption} className={styles.caption}>
        {chart.altText}
      </figcaption>
      <Disclosure summary="Numbers of this chart">
        <NumbersTable chart={chart} />
      </Disclosure>
    </figure>
  );
}

function useDrawing(of: "report" | "comparison", index: number) {
  const { actions } = usePane();
  const { drawChart } = actions;
  const place = useRef<HTMLDivElement>(null);
  const [outcome, setOutcome] = useState<"waiting" | "drawn" | "failed">("waiting");
  useEffect(() => {
    let wanted = true;
    const width = Math.max(200, Math.min(WIDEST, place.current?.clientWidth ?? WIDEST));
    drawChart(of, index, width).then(
      (svg) => {
        if (!wanted) return;
        place.current?.replaceChildren(svgElement(svg));
        setOutcome("drawn");
      },
      () => wanted && setOutcome("failed"),
    );
    return () => {
      wanted = false;
    };
  }, [drawChart, of, index]);
  return { place, outcome };
}
