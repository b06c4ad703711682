import type { CellRange, TableIn, WorkbookIn } from "../../workbook/workbook";
import { type LineChange, rangeAfter } from "./grid/line-changes";

/** Whether a cell of a sheet holds something. */
export type IsFilled = (row: number, column: number) => boolean;

/** The tables of the opened workbook, which the grid itself knows nothing of: they move as rows come and go. */
export class TablesInGrid {
  private readonly bySheet: Map<string, TableIn[]>;

  constructor(workbook: WorkbookIn, sheetIdAt: (index: number) => string) {
    this.bySheet = new Map(workbook.sheets.map(({ tables }, index) => [sheetIdAt(index), [...tables]]));
  }

  /** As they stand now: a table takes in the rows typed right below it, as it would in Excel. */
  of(sheetId: string, isFilled: IsFilled): TableIn[] {
    return (this.bySheet.get(sheetId) ?? []).map((table) => ({ ...table, range: grownRange(table, isFilled) }));
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

function grownRange({ range, totalsRow }: TableIn, isFilled: IsFilled): CellRange {
  let { bottom } = range;
  if (!totalsRow) while (hasCells(bottom + 1, range, isFilled)) bottom += 1;
  return { ...range, bottom };
}

function hasCells(row: number, { left, right }: CellRange, isFilled: IsFilled): boolean {
  for (let column = left; column <= right; column += 1) if (isFilled(row, column)) return true;
  return false;
}
