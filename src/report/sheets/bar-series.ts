import type { SeriesLook } from "../../workbook/series-looks";
import type { SeriesOut } from "../../workbook/sheets";
import type { CellRange } from "../../workbook/workbook";
import type { NumbersBehind } from "./chart-grid";

export interface BarPart {
  readonly name: string;
  readonly look: SeriesLook;
}

export interface Bar {
  readonly label: string;
  /** In the order of the parts. */
  readonly values: readonly (number | string | null)[];
}

/** Bars or columns, each of the same parts, with their numbers written beside the charts. */
export function barSeries(parts: readonly BarPart[], bars: readonly Bar[], numbers: NumbersBehind): SeriesOut[] {
  const { labels, columns } = labelledColumns(
    parts.map(({ name }) => name),
    bars,
    numbers,
  );
  return parts.map(({ name, look }, part) => ({ name, look, x: labels, y: columns[part] as CellRange }));
}

/** Writes labelled rows under their headings, and says where labels and columns stand. */
export function labelledColumns(
  headings: readonly string[],
  rows: readonly Bar[],
  numbers: NumbersBehind,
): { readonly labels: CellRange; readonly columns: readonly CellRange[] } {
  numbers.add(["", ...headings]);
  for (const { label, values } of rows) numbers.add([label, ...values]);
  return {
    labels: numbers.lastRows(rows.length, 0),
    columns: headings.map((_, column) => numbers.lastRows(rows.length, column + 1)),
  };
}
