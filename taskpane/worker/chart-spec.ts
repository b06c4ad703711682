import type { TopLevelSpec } from "vega-lite";
import type { SheetOut } from "../../src/workbook/sheets";
import { CHART_INK, fillOf } from "./chart-looks";
import { type ReportChart, valuesIn } from "./chart-preview";
import { curveLayers } from "./curve-layers";

/** A chart of the report as a Vega-Lite specification: the same series from the same cells. */
export function chartSpec({ sheet, chart }: ReportChart, width: number): TopLevelSpec {
  const body = chart.kind === "curve" ? curveLayers(sheet, chart) : bars(sheet, chart, width);
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

/** Characters that fit a chart of the usual pane are few: long labels get their line, short ones do not waste it. */
const LABEL_SHARE = 0.58;

function bars(sheet: SheetOut, { kind, series, x, y }: ReportChart["chart"], width: number): object {
  const values = series.flatMap((each, order) => {
    const ys = valuesIn(sheet, each.y);
    return valuesIn(sheet, each.x).map((label, at) => ({ label, series: each.name, order, value: ys[at] ?? null }));
  });
  const labels = [...new Set(values.map(({ label }) => label))];
  const lying = kind.startsWith("bar");
  const stack = kind.includes("share") ? "normalize" : "zero";
  const along = {
    field: "value",
    type: "quantitative",
    stack,
    axis: { title: y.title || null, ...valueAxis(kind, width) },
  };
  const across = {
    field: "label",
    type: "nominal",
    sort: labels,
    axis: { title: x.title || null, labelLimit: width * LABEL_SHARE, labelAngle: lying ? 0 : -40, grid: false },
  };
  return {
    height: lying ? { step: 26 } : 180,
    data: { values },
    mark: { type: "bar", stroke: CHART_INK.quiet, strokeWidth: 0.75 },
    encoding: {
      [lying ? "x" : "y"]: along,
      [lying ? "y" : "x"]: across,
      order: { field: "order", type: "ordinal" },
      fill: {
        field: "series",
        type: "nominal",
        scale: { domain: series.map(({ name }) => name), range: series.map(({ look }) => fillOf(look)) },
        legend: null,
      },
    },
  };
}

function valueAxis(kind: ReportChart["chart"]["kind"], width: number): object {
  if (!kind.includes("share")) return { format: ",d", tickCount: 4 };
  const narrow = kind.startsWith("bar") && width < 400;
  return { format: ".0%", values: narrow ? [0, 0.5, 1] : [0, 0.25, 0.5, 0.75, 1], labelFlush: true };
}
