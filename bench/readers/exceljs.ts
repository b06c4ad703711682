import ExcelJS from "exceljs";
import { DATE_COLUMN, type Found } from "./found";

export async function readWithExceljs(file: string): Promise<Found> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.readFile(file);
  const sheet = book.worksheets[0]!;
  let dates = 0;
  sheet.eachRow((row, at) => {
    const { value } = row.getCell(DATE_COLUMN + 1);
    if (at > 1) dates += value instanceof Date ? Math.round(value.getTime() / 86_400_000) + 25_569 : Number(value);
  });
  return { rows: sheet.rowCount, dates, lastChild: String(sheet.getRow(sheet.rowCount).getCell(1).value) };
}
