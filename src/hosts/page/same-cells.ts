import { CELL, type Grid, type GridColumn } from "../../workbook/cells";
import type { SheetIn, WorkbookIn } from "../../workbook/workbook";
import type { Slices } from "./snapshot/slices";

/** Whether every sheet that was read still stands there with the same cells. Sheets added since do not matter. */
export async function sameCells(read: WorkbookIn, now: WorkbookIn, slices: Slices): Promise<boolean> {
  const standing = new Map(now.sheets.map((sheet) => [sheet.name, sheet]));
  for (const sheet of read.sheets) {
    const other = standing.get(sheet.name);
    if (!other || !(await sameSheet(sheet, other, slices))) return false;
  }
  return true;
}

async function sameSheet(a: SheetIn, b: SheetIn, slices: Slices): Promise<boolean> {
  if (a.grid.rowCount !== b.grid.rowCount || a.grid.columns.length !== b.grid.columns.length) return false;
  for (let column = 0; column < a.grid.columns.length; column += 1) {
    if (!sameColumn(a.grid, b.grid, column)) return false;
    await slices.rest();
  }
  return true;
}

function sameColumn(a: Grid, b: Grid, column: number): boolean {
  const [one, other] = [a.columns[column], b.columns[column]];
  const length = Math.max(one?.kinds.length ?? 0, other?.kinds.length ?? 0);
  for (let row = 0; row < length; row += 1) {
    const kind = one?.kinds[row] ?? 0;
    if (kind !== (other?.kinds[row] ?? 0)) return false;
    if (kind !== 0 && contentOf(a, one, row) !== contentOf(b, other, row)) return false;
  }
  return true;
}

const TEXT_KINDS: ReadonlySet<number> = new Set([CELL.text, CELL.error]);

function contentOf(grid: Grid, column: GridColumn | undefined, row: number): string | number | undefined {
  const value = column?.values[row];
  return TEXT_KINDS.has(column?.kinds[row] ?? 0) ? grid.strings[value ?? -1] : value;
}
