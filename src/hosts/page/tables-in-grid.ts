import { CELL, type Grid, kindAt, stringAt } from "../../workbook/cells";
import type { CellRange, TableIn, WorkbookIn } from "../../workbook/workbook";
import { type LineChange, rangeAfter } from "./grid/line-changes";

/** The tables of the opened workbook, which the grid itself knows nothing of: they move as rows come and go. */
export class TablesInGrid {
  private readonly bySheet: Map<string, TableIn[]>;

  constructor(workbook: WorkbookIn, sheetIdAt: (index: number) => string) {
    this.bySheet = new Map(workbook.sheets.map(({ tables }, index) => [sheetIdAt(index), [...tables]]));
  }

  /** As they stand now: a table takes in the rows typed right below it, as it would in Excel. */
  of(sheetId: string, grid: Grid): TableIn[] {
    return (this.bySheet.get(sheetId) ?? []).map((table) => ({ ...table, range: grownRange(table, grid) }));
  }

  change(change: LineChange): void {
    const tables = this.bySheet.get(change.sheetId) ?? [];
    const kept = tables.flatMap((table) => {
      const range = rangeAfter(table.range, change);
      return range ? [{ ...table, range }] : [];
    });
    this.bySheet.set(change.sheetId, kept);
  }
}

export function headingsOf({ range }: TableIn, grid: Grid): string[] {
  return Array.from({ length: range.right - range.left + 1 }, (_, at) => stringAt(grid, range.top, range.left + at));
}

function grownRange({ range, totalsRow }: TableIn, grid: Grid): CellRange {
  let { bottom } = range;
  if (!totalsRow) while (bottom + 1 < grid.rowCount && hasCells(grid, bottom + 1, range)) bottom += 1;
  return { ...range, bottom };
}

function hasCells(grid: Grid, row: number, { left, right }: CellRange): boolean {
  for (let column = left; column <= right; column += 1) if (kindAt(grid, row, column) !== CELL.empty) return true;
  return false;
}
