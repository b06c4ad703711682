import { Table, TableColumn, TableStyle, type Worksheet } from "wasm-xlsxwriter/web";
import { cellText } from "../../../workbook/sheet-text";
import type { CellOut, CellStyle, SheetOut, TableOut } from "../../../workbook/sheets";
import type { Formats } from "./formats";

export function addTables(target: Worksheet, sheet: SheetOut, formats: Formats): void {
  for (const table of sheet.tables ?? []) {
    const { top, left, right } = table.range;
    // A table needs one row below its headings.
    const bottom = Math.max(table.range.bottom, top + 1);
    target.addTable(top, left, bottom, right, excelTable(table, sheet, formats));
  }
}

function excelTable(table: TableOut, sheet: SheetOut, formats: Formats): Table {
  const row = sheet.rows[table.range.top] ?? [];
  const columns = headings(table, sheet).map((text, index) => {
    const heading = formats.get(styleOf(row[table.range.left + index]) ?? "heading", undefined);
    return new TableColumn().setHeader(text).setHeaderFormat(heading);
  });
  return new Table().setName(tableName(table.name)).setColumns(columns).setStyle(TableStyle.Light1);
}

function headings(table: TableOut, sheet: SheetOut): string[] {
  const row = sheet.rows[table.range.top] ?? [];
  const texts = row.slice(table.range.left, table.range.right + 1).map(textOf);
  const distinct = new Set(texts.map((text) => text.toLowerCase()));
  if (texts.length !== table.range.right - table.range.left + 1 || texts.includes("") || distinct.size < texts.length) {
    throw new RangeError(`workbookBytes: the headings of table ${table.name} must be texts that differ`);
  }
  return texts;
}

function textOf(cell: CellOut): string {
  const value = typeof cell === "object" && cell !== null ? cell.value : cell;
  return typeof value === "string" ? cellText(value) : "";
}

function styleOf(cell: CellOut | undefined): CellStyle | undefined {
  return typeof cell === "object" && cell !== null ? cell.style : undefined;
}

function tableName(name: string): string {
  const looksLikeCell = /^([a-z]{1,3}\d+|r\d*c?\d*|c\d*)$/i.test(name);
  if (!/^[A-Za-z_][A-Za-z0-9_.]{0,254}$/.test(name) || looksLikeCell) {
    throw new RangeError(`workbookBytes: ${name} is no name for a table`);
  }
  return name;
}
