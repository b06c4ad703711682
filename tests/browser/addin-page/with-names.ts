import type { CellOut, SheetOut } from "../../../src/workbook/sheets";
import { CANARY } from "./books";

/** The sheets with a column of names beside Children, which the sample, being invented, has not. */
export function withNames(sheets: readonly SheetOut[]): SheetOut[] {
  return sheets.map((sheet) => (sheet.name === "Children" ? named(sheet) : sheet));
}

function named(sheet: SheetOut): SheetOut {
  const at = Math.max(...sheet.rows.map(({ length }) => length));
  const headings = sheet.rows.findIndex((row) => row.length > 3);
  const rows = sheet.rows.map((row, index): CellOut[] => {
    const blank = Array.from({ length: at - row.length }, () => null);
    if (index < headings) return [...row];
    return [...row, ...blank, index === headings ? "Name" : `${CANARY} ${index}`];
  });
  const tables = (sheet.tables ?? []).map((table) => ({ ...table, range: { ...table.range, right: at } }));
  return { ...sheet, rows, tables, columns: [...sheet.columns, { width: 20 }] };
}
