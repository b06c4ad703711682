import { type ExcelValue, excelValue, wholeCell } from "./excel-value";
import type { DateSystem } from "../../../age/serial";
import type { SheetOut } from "../../../workbook/sheets";

/** Excel on the web takes 5 MB a request; 1 MB keeps it answering, office.js adds its own share. */
const MOST_BYTES = 900_000;
/** So many cells are laid out within a few milliseconds. */
const MOST_CELLS = 20_000;

/** A rectangle of values that goes in one request. */
export interface ValueBlock {
  readonly top: number;
  readonly left: number;
  readonly values: readonly (readonly ExcelValue[])[];
}

/** The values of a sheet, from the top down, in blocks of rows; a row too long for one request goes in pieces. */
export function* valueBlocks(sheet: SheetOut, dateSystem: DateSystem): Generator<ValueBlock> {
  const width = Math.max(...sheet.rows.map((row) => row.length), 0);
  if (width === 0) return;
  let rows: ExcelValue[][] = [];
  let bytes = 0;
  for (const [index, cells] of sheet.rows.entries()) {
    const values = rowOf(cells, sheet, width, dateSystem);
    const rowBytes = bytesOf(values);
    const isFull = bytes + rowBytes > MOST_BYTES || (rows.length + 1) * width > MOST_CELLS;
    if (rows.length > 0 && isFull) {
      yield { top: index - rows.length, left: 0, values: rows };
      [rows, bytes] = [[], 0];
    }
    if (rowBytes > MOST_BYTES) yield* piecesOf(values, index);
    // A row that went in pieces is left as it stands: null changes nothing.
    rows.push(rowBytes > MOST_BYTES ? values.map(() => null) : values);
    bytes += rowBytes > MOST_BYTES ? width * jsonBytes(null) : rowBytes;
  }
  yield { top: sheet.rows.length - rows.length, left: 0, values: rows };
}

function rowOf(cells: SheetOut["rows"][number], sheet: SheetOut, width: number, dateSystem: DateSystem): ExcelValue[] {
  return Array.from({ length: width }, (_, column) =>
    excelValue(wholeCell(cells[column] ?? null, sheet.columns[column]), dateSystem),
  );
}

function* piecesOf(values: readonly ExcelValue[], top: number): Generator<ValueBlock> {
  let left = 0;
  let bytes = 0;
  for (const [column, value] of values.entries()) {
    const more = jsonBytes(value);
    if (column > left && bytes + more > MOST_BYTES) {
      yield { top, left, values: [values.slice(left, column)] };
      [left, bytes] = [column, 0];
    }
    bytes += more;
  }
  yield { top, left, values: [values.slice(left)] };
}

function bytesOf(values: readonly ExcelValue[]): number {
  return values.reduce<number>((sum, value) => sum + jsonBytes(value), 0);
}

/** Bytes of a value in a request, never fewer than it takes: JSON, then UTF-8, and the comma. */
function jsonBytes(value: ExcelValue): number {
  if (typeof value === "string") return textBytes(value) + 3;
  if (typeof value === "number") return 25;
  return 6;
}

function textBytes(text: string): number {
  let bytes = 0;
  for (let at = 0; at < text.length; at += 1) bytes += unitBytes(text.charCodeAt(at));
  return bytes;
}

function unitBytes(unit: number): number {
  if (unit < 0x20) return 6;
  if (unit === 0x22 || unit === 0x5c) return 2;
  if (unit < 0x80) return 1;
  return unit < 0x800 ? 2 : 3;
}
