import type { SeriesLook } from "../../workbook/series-looks";
import type { SeriesOut } from "../../workbook/sheets";
import type { NumbersBehind } from "./chart-grid";

/** Null breaks the line; a point without a height stands in the numbers and is not drawn. */
export type SeriesPoint = readonly [x: number, y: number | null] | null;

/** A series of points, with its numbers written beside the charts under its name. */
export function pointSeries(
  name: string,
  points: readonly SeriesPoint[],
  look: SeriesLook,
  numbers: NumbersBehind,
  [xHeading, yHeading]: readonly [x: string, y: string],
): SeriesOut {
  numbers.add([name, xHeading, yHeading]);
  for (const point of points) numbers.add(point === null ? [null, null, null] : ["", ...point]);
  return { name, x: numbers.lastRows(points.length, 1), y: numbers.lastRows(points.length, 2), look };
}
