import { isFill } from "../../../src/workbook/series-looks";
import type { AxisOut, ChartOut, SeriesOut, SheetOut } from "../../../src/workbook/sheets";
import { axisTicks, isShare, numberAxis } from "./axes";
import { CHART_INK, fillOf } from "./looks";
import { valuesIn } from "./preview";
import { seriesLayers } from "./series-layers";

/** Long labels of lying bars go over several lines. */
const LINE_CHARACTERS = 24;
const LINE_PIXELS = 13;
/** More columns than this have a label each third. */
const MOST_LABELS = 12;

/** Bars or columns of stacked parts, with lines over them where the chart has some; or lines alone over the same labels. */
export function barLayers(sheet: SheetOut, chart: ChartOut, width: number): object {
  const lying = chart.kind.startsWith("bar");
  const labels = [
    ...new Set(chart.series.flatMap((each) => valuesIn(sheet, each.x).map((label) => String(label ?? "")))),
  ];
  const along = valueChannel(chart, width);
  const across = labelChannel(chart.x, labels, lying);
  const parts = chart.series.filter(({ look }) => isFill(look));
  const bars = parts.length === 0 ? [] : [stackLayer(sheet, { ...chart, series: parts }, along, across)];
  const encoding = {
    x: { field: "x", type: "nominal", ...across },
    y: { field: "y", type: "quantitative", ...along },
  };
  const lines = chart.series
    .filter(({ look }) => !isFill(look))
    .flatMap((each) => {
      const ys = valuesIn(sheet, each.y);
      const places = valuesIn(sheet, each.x).map((x, at) => ({ x, y: ys[at] ?? null }));
      return seriesLayers(each, places, encoding);
    });
  const mostLines = Math.max(...labels.map((label) => linesOf(label).length));
  const height = lying ? { step: 13 + LINE_PIXELS * mostLines } : 180;
  const [only] = bars;
  return lines.length === 0 && only ? { height, ...only } : { height, layer: [...bars, ...lines] };
}

function stackLayer(sheet: SheetOut, { kind, series, y }: ChartOut, along: object, across: object): object {
  const lying = kind.startsWith("bar");
  const values = series.flatMap((each, order) => {
    const ys = valuesIn(sheet, each.y);
    return valuesIn(sheet, each.x).map((x, at) => ({ x, series: each.name, order, y: ys[at] ?? null }));
  });
  const stack = kind.includes("share") ? "normalize" : "zero";
  return {
    data: { values },
    // a bar that begins below the scale ends at it
    mark: { type: "bar", stroke: CHART_INK.quiet, strokeWidth: 0.75, ...((y.min ?? 0) > 0 && { clip: true }) },
    encoding: {
      [lying ? "x" : "y"]: { field: "y", type: "quantitative", stack, ...along },
      [lying ? "y" : "x"]: { field: "x", type: "nominal", ...across },
      order: { field: "order", type: "ordinal" },
      fill: {
        field: "series",
        type: "nominal",
        scale: { domain: series.map(({ name }) => name), range: series.map(({ look }) => fillOf(look)) },
        legend: null,
      },
      ...(series.some(({ look }) => look === "clear") && { stroke: outlines(series) }),
    },
  };
}

/** What is not drawn has no outline. */
function outlines(series: readonly SeriesOut[]): object {
  const domain = series.map(({ name }) => name);
  const range = series.map(({ look }) => (look === "clear" ? "transparent" : CHART_INK.quiet));
  return { field: "series", type: "nominal", scale: { domain, range }, legend: null };
}

function labelChannel(x: AxisOut, labels: readonly string[], lying: boolean): object {
  const values = labels.length > MOST_LABELS && !lying ? labels.filter((_, at) => at % 3 === 0) : labels;
  const lines = Object.fromEntries(labels.map((label) => [label, linesOf(label)]));
  const axis = {
    ...{ title: x.title || null, values, grid: false, labelAngle: lying ? 0 : -40, labelLimit: 0 },
    ...(x.labelEvery === 0 && { labels: false, ticks: false }),
    ...(lying && { labelExpr: `${JSON.stringify(lines)}[datum.label]` }),
  };
  return { sort: labels, axis };
}

function linesOf(label: string): string[] {
  const lines: string[] = [];
  for (const word of label.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < LINE_CHARACTERS) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

function valueChannel({ kind, y }: ChartOut, width: number): object {
  const { min, max, step } = y;
  const domain = min === undefined || max === undefined ? undefined : ([min, max] as const);
  const narrow = isShare(y.format) && kind.startsWith("bar") && width < 400;
  const ticks = narrow ? [0, 0.5, 1] : domain && axisTicks({ ...y, ...(step === undefined && { step: 0.25 }) }, domain);
  return {
    ...(domain && { scale: { domain, nice: false, zero: false } }),
    axis: { ...numberAxis(y), ...(ticks ? { values: ticks, labelFlush: true } : { tickCount: 4, tickMinStep: 1 }) },
  };
}
