import { isoOf } from "../../../age/day";
import { type DateSystem, serialOf } from "../../../age/serial";
import { cellText } from "../../../workbook/sheet-text";
import {
  type CellFormat,
  type CellOut,
  type ColumnOut,
  LONGEST_CELL_TEXT,
  type StyledCell,
} from "../../../workbook/sheets";

export type ExcelValue = string | number | boolean | null;

/** A cell with the format and the style of its column where it has none of its own. */
export function wholeCell(cell: CellOut, column: ColumnOut | undefined): StyledCell {
  if (typeof cell === "object" && cell !== null) return cell;
  const { format, style } = column ?? {};
  return { value: cell, ...(format && { format }), ...(style && { style }) };
}

/** What `Range.values` takes for a cell; null leaves it empty. */
export function excelValue({ value, format }: StyledCell, dateSystem: DateSystem): ExcelValue {
  if (value === null || value === "") return null;
  if (typeof value === "number") return excelNumber(value, format, dateSystem);
  return typeof value === "string" ? keptText(value) : value;
}

function excelNumber(value: number, format: CellFormat | undefined, dateSystem: DateSystem): ExcelValue {
  if (!Number.isFinite(value)) throw new RangeError("addSheets: a cell holds no finite number");
  if (format !== "date") return value;
  const serial = serialOf(value, dateSystem);
  // Excel shows no day before its first one.
  return serial < (dateSystem === 1904 ? 0 : 1) ? keptText(isoOf(value)) : serial;
}

/**
 * Excel reads what it is handed as if it were typed: `=`, `+`, `-` and `@` begin a formula, and what begins a number or
 * a date depends on the user's language. An apostrophe in front, which is no part of the text, keeps every text a text.
 */
function keptText(text: string): string {
  return `'${cellText(text).slice(0, LONGEST_CELL_TEXT - 1)}`;
}
