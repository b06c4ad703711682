import { serialOf } from "../../src/age/serial";
import type { CellOut, SheetOut } from "../../src/workbook/sheets";
import type { MemorySheet } from "./workbook/memory-sheet";
import { MemoryWorkbook, type MemoryWorkbookOptions } from "./workbook/memory-workbook";

/** A workbook in memory that holds these sheets, days as serials of its date system. */
export function bookOf(sheets: readonly SheetOut[], options: MemoryWorkbookOptions = {}): MemoryWorkbook {
  const book = new MemoryWorkbook(options);
  for (const sheet of sheets) fill(book, book.addSheet(sheet.name), sheet);
  return book;
}

function fill(book: MemoryWorkbook, target: MemorySheet, sheet: SheetOut): void {
  sheet.rows.forEach((cells, row) => cells.forEach((cell, column) => put(book, target, row, column, cell, sheet)));
  for (const { name, range } of sheet.tables ?? []) {
    book.addTable(target, { name, area: range, style: "TableStyleLight1", showHeaders: true, showTotals: false });
  }
}

function put(book: MemoryWorkbook, to: MemorySheet, row: number, column: number, cell: CellOut, sheet: SheetOut): void {
  const whole = typeof cell === "object" && cell !== null ? cell : { value: cell, ...sheet.columns[column] };
  if (whole.value === null || whole.value === "") return;
  const isDay = whole.format === "date" && typeof whole.value === "number";
  to.put(row, column, isDay ? serialOf(whole.value as number, book.dateSystem) : whole.value);
  if (isDay) to.setFormat(row, column, "yyyy-mm-dd");
}
