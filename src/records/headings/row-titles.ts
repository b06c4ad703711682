import { CELL, type Grid } from "../../workbook/cells";
import { shownText } from "../cells/cell-text";
import { isBlankText } from "../cells/words";

const LONGEST_TITLE = 40;
const FEWEST_BELOW = 3;

/** Rows that hold one text and nothing else, above rows of records: `North`, and below it the children of that site. */
export function rowTitles(grid: Grid, left: number, right: number, rows: Int32Array): ReadonlyMap<number, string> {
  const filled = (row: number) => {
    const columns = Array.from({ length: right - left + 1 }, (_, i) => left + i);
    return columns.filter((column) => !isBlank(grid, row, column));
  };
  const titles = new Map<number, string>();
  rows.forEach((row, i) => {
    const next = rows[i + 1];
    const [at, ...more] = filled(row);
    if (at === undefined || more.length > 0 || next === undefined || filled(next).length < FEWEST_BELOW) return;
    const text = grid.columns[at]?.kinds[row] === CELL.text ? shownText(grid, row, at) : "";
    if (text !== "" && text.length <= LONGEST_TITLE) titles.set(row, text);
  });
  return titles;
}

/** The title above each row of records; rows above the first title have none. */
export function titleOfRows(titles: ReadonlyMap<number, string>, rows: Int32Array): ReadonlyMap<number, string> {
  let title = "";
  const byRow = new Map<number, string>();
  for (const row of rows) {
    const own = titles.get(row);
    if (own === undefined) byRow.set(row, title);
    else title = own;
  }
  return byRow;
}

function isBlank(grid: Grid, row: number, column: number): boolean {
  const cells = grid.columns[column];
  const kind = cells?.kinds[row] ?? CELL.empty;
  if (kind === CELL.text) return isBlankText(grid.strings[cells?.values[row] as number] as string);
  return kind === CELL.empty || (kind === CELL.number && cells?.values[row] === 0);
}
