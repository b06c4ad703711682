import type { ChartOut, SeriesOut, SheetOut } from "../../src/workbook/sheets";
import { CHART_INK, lineOf } from "./chart-looks";
import { valuesIn } from "./chart-preview";

/** A curve chart: the window as a shaded band behind, then the lines, then the source's own mark. */
export function curveLayers(sheet: SheetOut, { series, x, y }: ChartOut): object {
  const xAxis = {
    type: "quantitative",
    scale: { domain: [x.min ?? 0, x.max ?? null], nice: false },
    axis: { title: axisTitle(x.title), values: ticks(x.min, x.max, x.step), grid: false },
  };
  const yAxis = {
    type: "quantitative",
    scale: { domain: [y.min ?? 0, y.max ?? 1] },
    axis: { title: y.title || null, format: ".0%", values: [0, 0.25, 0.5, 0.75, 1] },
  };
  const axes = { x: { field: "x", ...xAxis }, y: { field: "y", ...yAxis } };
  const layer = series.map((each) => layerOf(sheet, each, axes, yAxis.scale.domain));
  return { height: 190, layer, resolve: { scale: { color: "shared" } } };
}

/** The window's own words stand under the chart in full; an axis would cut them off. */
function axisTitle(title: string): string {
  return title.split(";")[0] ?? title;
}

function ticks(min = 0, max?: number, step?: number): number[] | undefined {
  if (max === undefined || step === undefined) return undefined;
  return Array.from({ length: Math.floor((max - min) / step) + 1 }, (_, at) => min + at * step);
}

function layerOf(
  sheet: SheetOut,
  series: SeriesOut,
  axes: { x: object; y: object },
  domain: readonly number[],
): object {
  const xs = valuesIn(sheet, series.x);
  const ys = valuesIn(sheet, series.y);
  const values = xs.map((x, at) => ({ x, y: ys[at] ?? null, at }));
  if (series.look === "band") return band(xs, axes, domain);
  if (series.look === "point") {
    const mark = { type: "point", shape: "diamond", size: 110, filled: true, color: CHART_INK.text };
    return { data: { values }, mark, encoding: axes };
  }
  const { colour, width, dash } = lineOf(series.look);
  const mark = { type: "line", color: colour, strokeWidth: width, strokeDash: dash };
  return { data: { values }, mark, encoding: { ...axes, order: { field: "at" } } };
}

function band(xs: readonly unknown[], axes: { x: object; y: object }, [low = 0, high = 1]: readonly number[]): object {
  const months = xs.filter((each) => typeof each === "number");
  const values = [{ x: Math.min(...months), x2: Math.max(...months), y: low, y2: high }];
  const mark = { type: "rect", color: CHART_INK.pale, stroke: CHART_INK.quiet, strokeWidth: 0.75, strokeDash: [2, 3] };
  return { data: { values }, mark, encoding: { ...axes, x2: { field: "x2" }, y2: { field: "y2" } } };
}
