import type { SeriesLook, SeriesOut } from "../../workbook/sheets";
import type { NumbersBehind } from "./chart-grid";

export interface BarPart {
  readonly name: string;
  readonly look: SeriesLook;
}

export interface Bar {
  readonly label: string;
  /** In the order of the parts. */
  readonly values: readonly (number | null)[];
}

/** Bars or columns, each of the same parts, with their numbers written beside the charts. */
export function barSeries(parts: readonly BarPart[], bars: readonly Bar[], numbers: NumbersBehind): SeriesOut[] {
  numbers.add(["", ...parts.map(({ name }) => name)]);
  for (const { label, values } of bars) numbers.add([label, ...values]);
  const x = numbers.lastRows(bars.length, 0);
  return parts.map(({ name, look }, part) => ({ name, look, x, y: numbers.lastRows(bars.length, part + 1) }));
}
