import { CELL, type Grid } from "../../workbook/cells";
import { displayOf } from "./words";

/** The text of a cell as it is shown; "" for an empty cell, an error and a formula without a value. Numbers are their own text. */
export function shownText(grid: Grid, row: number, column: number): string {
  const cells = grid.columns[column];
  const kind = cells?.kinds[row] ?? CELL.empty;
  const value = cells?.values[row] as number;
  if (kind === CELL.text) return displayOf(grid.strings[value] as string);
  if (kind === CELL.number || kind === CELL.date) return String(value);
  return kind === CELL.boolean ? (value === 1 ? "TRUE" : "FALSE") : "";
}
