import { dayFromSerial } from "../../age/serial";
import { CELL, type Grid, kindAt, numberAt, stringAt } from "../../workbook/cells";
import type { CellOut, SheetOut, TableOut } from "../../workbook/sheets";
import type { SheetIn, TableIn, WorkbookIn } from "../../workbook/workbook";
import { NO_RESULT } from "./no-result";

const WIDEST_CHARACTERS = 44;
const ROWS_MEASURED = 200;

/** The workbook as it stands, for a file: values without formulas. A sheet of a report goes as it was made, with its charts. */
export function savedSheets(workbook: WorkbookIn, made: ReadonlyMap<string, SheetOut>): SheetOut[] {
  return workbook.sheets.map((sheet) => {
    const ofReport = made.get(sheet.name);
    return ofReport ? { ...ofReport, name: sheet.name } : savedSheet(sheet, workbook.dateSystem);
  });
}

function savedSheet({ name, grid, tables, merged }: SheetIn, dateSystem: WorkbookIn["dateSystem"]): SheetOut {
  const columnNumbers = Array.from({ length: grid.columns.length }, (_, column) => column);
  const rows = Array.from({ length: grid.rowCount }, (_, row) =>
    columnNumbers.map((column) => savedCell(grid, row, column, dateSystem)),
  );
  return {
    name,
    columns: columnNumbers.map((column) => ({ width: widthOf(grid, column) })),
    rows,
    tables: tables
      .filter((table) => hasHeadings(table, grid))
      .map(({ name: table, range }): TableOut => ({ name: table, range })),
    merged,
  };
}

function savedCell(grid: Grid, row: number, column: number, dateSystem: WorkbookIn["dateSystem"]): CellOut {
  const number = numberAt(grid, row, column);
  switch (kindAt(grid, row, column)) {
    case CELL.empty:
      return null;
    case CELL.number:
      return number;
    case CELL.boolean:
      return number !== 0;
    case CELL.date: {
      const day = dayFromSerial(number, dateSystem);
      return day === null ? number : { value: day + (number - Math.floor(number)), format: "date" };
    }
    case CELL.noCachedValue:
      return NO_RESULT;
    default:
      return stringAt(grid, row, column);
  }
}

/** A file can hold a table only below headings that are texts and differ. */
function hasHeadings({ headerRow, totalsRow, range }: TableIn, grid: Grid): boolean {
  const headings = new Set<string>();
  for (let column = range.left; column <= range.right; column += 1) {
    headings.add(stringAt(grid, range.top, column).toLowerCase());
  }
  return headerRow && !totalsRow && !headings.has("") && headings.size === range.right - range.left + 1;
}

function widthOf(grid: Grid, column: number): number {
  let most = 10;
  for (let row = 0; row < Math.min(grid.rowCount, ROWS_MEASURED); row += 1) {
    most = Math.max(most, Math.min(stringAt(grid, row, column).length + 2, WIDEST_CHARACTERS));
  }
  return most;
}
