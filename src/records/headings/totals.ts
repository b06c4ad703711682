import { CELL, type Grid } from "../../workbook/cells";
import type { CellRange } from "../../workbook/workbook";
import { headingKey, isBlankText } from "../cells/words";

const TOTAL_WORDS = new Set(["total", "totals", "grandtotal", "subtotal", "subtotals", "totales"]);
/** Where an id should be: "Total children 61", "Totals:", "Count", "Average". */
const TOTAL_LABEL =
  /^\s*(?:(?:grand |sub-?)?total(?:s|es)?\b(?!-)|(?:count|sum|average|mean|suma|promedio)\s*[:=]?\s*\d*\s*$)/i;
const MAYBE_TOTAL = /tot|count|sum|average|mean|promedio|[^ -~]/i;
const LONGEST_TOTAL = 40;
/** A row of sums stands at the end, with few rows after it. */
const LAST_ROWS = 3;

const PLAIN = 0;
const LABEL = 1;
const WORD = 2;

/** Whether a row is one of totals by a word: a label of totals in its first cell or in place of the child, or the bare word anywhere. */
export function totalsByWord(grid: Grid, range: CellRange, child: number | undefined): (row: number) => boolean {
  const kinds = Uint8Array.from(grid.strings, kindOfText);
  if (!kinds.some((kind) => kind !== PLAIN)) return () => false;
  const columns = Array.from({ length: range.right - range.left + 1 }, (_, i) => range.left + i);
  return (row) =>
    columns.some((column) => {
      const cells = grid.columns[column];
      if (cells?.kinds[row] !== CELL.text) return false;
      const kind = kinds[cells.values[row] as number] as number;
      return kind === WORD || (kind === LABEL && (column === range.left || column === child));
    });
}

function kindOfText(text: string): number {
  if (text.length > LONGEST_TOTAL || !MAYBE_TOTAL.test(text)) return PLAIN;
  if (TOTAL_WORDS.has(headingKey(text))) return WORD;
  return TOTAL_LABEL.test(text) ? LABEL : PLAIN;
}

/**
 * Rows at the end that name no child and hold nothing but numbers of which one at least is the sum of the numbers above it,
 * or the count of the filled cells, or of those that say the same.
 */
export function totalsBySum(grid: Grid, range: CellRange, rows: readonly number[], child: number): number[] {
  const last = rows.slice(-LAST_ROWS);
  const found: number[] = [];
  for (const row of last) {
    const above = rows.filter((each) => each < row && !found.includes(each));
    if (above.length > 1 && isBlank(grid, row, child) && sumsUp(grid, range, row, above)) found.push(row);
  }
  return found;
}

function sumsUp(grid: Grid, range: CellRange, row: number, above: readonly number[]): boolean {
  let fits = 0;
  for (let column = range.left; column <= range.right; column += 1) {
    if (isBlank(grid, row, column)) continue;
    if (grid.columns[column]?.kinds[row] !== CELL.number) return false;
    if (totalsOf(grid, column, above).has(grid.columns[column]?.values[row] as number)) fits += 1;
  }
  return fits > 0;
}

/** What a total below these cells could say. */
function totalsOf(grid: Grid, column: number, rows: readonly number[]): Set<number> {
  const cells = grid.columns[column];
  const byValue = new Map<string, number>();
  let filled = 0;
  let sum = 0;
  for (const row of rows) {
    if (isBlank(grid, row, column)) continue;
    filled += 1;
    const value = cells?.values[row] as number;
    if (cells?.kinds[row] === CELL.number) sum += value;
    const key = `${cells?.kinds[row] ?? 0} ${value}`;
    byValue.set(key, (byValue.get(key) ?? 0) + 1);
  }
  return new Set([filled, sum, ...[...byValue.values()].filter((count) => count > 1)]);
}

function isBlank(grid: Grid, row: number, column: number): boolean {
  const cells = grid.columns[column];
  const kind = cells?.kinds[row] ?? CELL.empty;
  return (
    kind === CELL.empty || (kind === CELL.text && isBlankText(grid.strings[cells?.values[row] as number] as string))
  );
}
