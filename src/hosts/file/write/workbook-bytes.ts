import { Format, Workbook } from "wasm-xlsxwriter/web";
import type { Day } from "../../../age/day";
import { safeSheetNames } from "../../../workbook/sheet-names";
import { FACE } from "../../../workbook/looks";
import { MOST_ROWS, type SheetOut } from "../../../workbook/sheets";
import { addCharts } from "./charts";
import { assertEngine, reserveMemory } from "./engine";
import { Formats } from "./formats";
import { setPage } from "./page";
import { sameBytes } from "./same-bytes";
import { addTables } from "./tables";
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
