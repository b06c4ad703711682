import ExcelJS from "exceljs";
import { dayFromSerial } from "../../src/age/serial";
import { a1Range, CELL } from "../../src/workbook/cells";
import type { SheetIn, WorkbookIn } from "../../src/workbook/workbook";

const MS_PER_DAY = 86_400_000;

/** A workbook of a test as a file, written by a library of others. */
export async function asFile(workbook: WorkbookIn): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  for (const sheet of workbook.sheets) fill(book.addWorksheet(sheet.name), sheet, workbook.dateSystem);
  return Buffer.from(await book.xlsx.writeBuffer());
}

function fill(out: ExcelJS.Worksheet, { grid, merged }: SheetIn, system: WorkbookIn["dateSystem"]): void {
  grid.columns.forEach((cells, column) =>
    cells?.kinds.forEach((kind, row) => {
      const value = cells.values[row] as number;
      const cell = out.getCell(row + 1, column + 1);
      if (kind === CELL.text) cell.value = grid.strings[value] as string;
      else if (kind === CELL.number) cell.value = value;
      else if (kind === CELL.date) cell.value = new Date((dayFromSerial(value, system) as number) * MS_PER_DAY);
    }),
  );
  for (const { top, left, bottom, right } of merged) out.mergeCells(a1Range(top, left, bottom, right));
}
