import { serialOf } from "../../src/age/serial";
import { CELL } from "../../src/workbook/cells";
import { GridBuilder } from "../../src/workbook/grid-builder";
import type { CellOut, SheetOut } from "../../src/workbook/sheets";
import type { SheetIn, WorkbookIn } from "../../src/workbook/workbook";

/** What a host would read from these sheets, without a file between. */
export function asRead(sheets: readonly SheetOut[]): WorkbookIn {
  return { dateSystem: 1900, sheets: sheets.map(sheetAsRead) };
}

function sheetAsRead(sheet: SheetOut): SheetIn {
  const builder = new GridBuilder();
  sheet.rows.forEach((row, r) =>
    row.forEach((cell, c) => put(builder, r, c, cell, sheet.columns[c]?.format === "date")),
  );
  const tables = (sheet.tables ?? []).map(({ name, range }) => ({ name, range, headerRow: true, totalsRow: false }));
  return { name: sheet.name, grid: builder.build(), tables, merged: sheet.merged ?? [] };
}

function put(builder: GridBuilder, row: number, column: number, cell: CellOut, dateColumn: boolean): void {
  const value = typeof cell === "object" && cell !== null ? cell.value : cell;
  const isDate = typeof cell === "object" && cell !== null ? cell.format === "date" : dateColumn;
  if (typeof value === "string" && value !== "") builder.text(row, column, value);
  else if (typeof value === "number" && isDate) builder.number(row, column, serialOf(value, 1900), CELL.date);
  else if (typeof value === "number") builder.number(row, column, value);
}
