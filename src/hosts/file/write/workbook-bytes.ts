import { Format, Table, TableColumn, TableStyle, Workbook, type Worksheet } from "wasm-xlsxwriter/web";
import { cellText } from "../../../workbook/sheet-text";
import { type CellOut, type CellStyle, MOST_ROWS, type SheetOut, type TableOut } from "../../../workbook/sheets";
import { Formats } from "./formats";
import type { Day } from "../../../age/day";
import { safeSheetNames } from "../../../workbook/sheet-names";
import { FACE } from "../../../workbook/looks";
import { addCharts } from "./charts";
import { assertEngine, reserveMemory } from "./engine";
import { setPage } from "./page";
import { sameBytes } from "./same-bytes";
import { writeCells } from "./write-cells";

export interface WorkbookOptions {
  /** The day the file says it was made: the as-of date, so that two runs give the same bytes. */
  readonly created: Day;
}

/** An xlsx file of values only. */
export function workbookBytes(sheets: readonly SheetOut[], options: WorkbookOptions): Uint8Array {
  assertEngine();
  sheets.forEach(checkSheet);
  const names = safeSheetNames(sheets.map((sheet) => sheet.name));
  reserveMemory(sheets.reduce((total, { rows, columns }) => total + rows.length * columns.length, 0));
  const workbook = new Workbook();
  try {
    const face = new Format().setFontName(FACE.name).setFontSize(FACE.points);
    workbook.setDefaultFormat(face, ROW_PIXELS, COLUMN_PIXELS);
    const formats = new Formats();
    sheets.forEach((sheet, index) => addSheet(workbook, sheet, names[index] as string, formats));
    const charts = sheets.flatMap((sheet) => sheet.charts ?? []);
    return sameBytes(
      workbook.saveToBufferSync(),
      options.created,
      charts,
      sheets.map((sheet) => sheet.lists ?? []),
    );
  } finally {
    workbook.free();
  }
}

/** Of rows and columns without a size of their own: 15 points, and eight figures of the face. */
const ROW_PIXELS = 20;
const COLUMN_PIXELS = 64;

function addSheet(workbook: Workbook, sheet: SheetOut, name: string, formats: Formats): void {
  const target = workbook.addWorksheet();
  target.setName(name);
  sheet.columns.forEach((column, index) => target.setColumnWidth(index, column.width).free());
  // Each call returns an object; a hundred thousand of them left to the garbage collector cost more than the writing.
  sheet.rowHeights?.forEach((height, row) => target.setRowHeight(row, height).free());
  writeCells(target, sheet, formats);
  addTables(target, sheet, formats);
  addCharts(target, sheet, name);
  if (sheet.frozen) target.setFreezePanes(sheet.frozen.rows, sheet.frozen.columns);
  if (sheet.gridlines === false) target.setScreenGridlines(false);
  if (sheet.print) setPage(target, sheet.print);
}

function checkSheet(sheet: SheetOut): void {
  if (sheet.rows.length > MOST_ROWS) throw new RangeError("workbookBytes: a sheet has more rows than Excel holds");
}

function addTables(target: Worksheet, sheet: SheetOut, formats: Formats): void {
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
