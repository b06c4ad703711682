import type { TopLevelSpec } from "vega-lite";
import { barLayers } from "./bar-layers";
import { CHART_INK } from "./looks";
import type { ReportChart } from "./preview";
import { curveLayers } from "./curve-layers";

/** A chart of the report as a Vega-Lite specification: the same series from the same cells. */
export function chartSpec({ sheet, chart }: ReportChart, width: number): TopLevelSpec {
  const body = chart.kind === "curve" ? curveLayers(sheet, chart) : barLayers(sheet, chart, width);
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    width,
    autosize: { type: "fit-x", contains: "padding" },
    config: configFor(width),
    ...body,
  } as TopLevelSpec;
}

const FONT = "system-ui, 'Segoe UI', sans-serif";

const configFor = (width: number) => ({
  background: "transparent",
  font: FONT,
  padding: 2,
  view: { stroke: null },
  axis: {
    labelColor: CHART_INK.text,
    titleColor: CHART_INK.quiet,
    titleFontWeight: "normal",
    titleFontSize: 12,
    labelFontSize: width < 340 ? 11 : 12,
    gridColor: CHART_INK.rule,
    domainColor: CHART_INK.quiet,
    tickColor: CHART_INK.quiet,
  },
});
