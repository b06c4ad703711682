import type { AxisOut, ChartOut, SeriesOut, SheetOut } from "../../../src/workbook/sheets";
import { axisTicks, numberAxis } from "./axes";
import { CHART_INK } from "./looks";
import { valuesIn } from "./preview";
import { seriesLayers } from "./series-layers";

/** Points in two directions: a window as a shaded band behind, then lines and marks in their order. */
export function curveLayers(sheet: SheetOut, { series, x, y }: ChartOut): object {
  const domain = { x: domainOf(x, valuesOf(sheet, series, "x")), y: domainOf(y, valuesOf(sheet, series, "y")) };
  const encoding = {
    x: axisOf("x", { ...x, title: shortTitle(x.title) }, domain.x, false),
    y: axisOf("y", y, domain.y, !y.hidden),
  };
  const layer = series.flatMap((each) => layersOf(sheet, each, encoding, domain));
  return { height: 190 + (y.hidden ? 20 * series.filter(({ named }) => named).length : 0), layer };
}

type Domain = readonly [low: number, high: number];

function domainOf({ min, max }: AxisOut, values: readonly number[]): Domain {
  return [min ?? Math.min(0, ...values), max ?? Math.max(1, ...values)];
}

function valuesOf(sheet: SheetOut, series: readonly SeriesOut[], side: "x" | "y"): number[] {
  return series.flatMap((each) => valuesIn(sheet, each[side]).filter((value) => typeof value === "number"));
}

function axisOf(field: string, out: AxisOut, domain: Domain, grid: boolean): object {
  const axis = out.hidden ? null : { ...numberAxis(out), values: axisTicks(out, domain), grid };
  return { field, type: "quantitative", scale: { domain, nice: false, zero: false }, axis };
}

/** The window's own words stand under the chart in full; an axis would cut them off. */
function shortTitle(title: string): string {
  return title.split(";")[0] ?? title;
}

function layersOf(
  sheet: SheetOut,
  series: SeriesOut,
  encoding: object,
  domain: { readonly x: Domain; readonly y: Domain },
): object[] {
  const xs = valuesIn(sheet, series.x);
  if (series.look === "band") return [band(xs, encoding, domain.y)];
  const ys = valuesIn(sheet, series.y);
  const places = xs.map((x, at) => ({ x, y: ys[at] ?? null }));
  return seriesLayers(series, places, encoding, (domain.x[0] + domain.x[1]) / 2);
}

function band(xs: readonly unknown[], encoding: object, [low, high]: Domain): object {
  const months = xs.filter((each) => typeof each === "number");
  const values = [{ x: Math.min(...months), x2: Math.max(...months), y: low, y2: high }];
  const mark = { type: "rect", color: CHART_INK.pale, stroke: CHART_INK.quiet, strokeWidth: 0.75, strokeDash: [2, 3] };
  return { data: { values }, mark, encoding: { ...encoding, x2: { field: "x2" }, y2: { field: "y2" } } };
}
