import type { Worksheet } from "wasm-xlsxwriter/web";
import { serialOf } from "../../../age/serial";
import { isoOf } from "../../../age/day";
import { a1 } from "../../../workbook/cells";
import type { CellFormat, CellOut, CellStyle, ColumnOut, SheetOut, StyledCell } from "../../../workbook/sheets";
import type { Formats } from "./formats";
import { cellText, looksLikeFormula } from "./text";

/** Writes every cell as a value: a text is never read as a formula, whatever it starts with. */
export function writeCells(target: Worksheet, sheet: SheetOut, formats: Formats): void {
  const merged = sheet.merged ?? [];
  for (const range of merged) {
    target.mergeRange(range.top, range.left, range.bottom, range.right, "", formats.get("text", undefined));
  }
  sheet.rows.forEach((cells, row) =>
    cells.forEach((cell, column) => {
      if (cell !== null) writeCell(target, row, column, styled(cell, sheet.columns[column]), formats);
    }),
  );
}

function styled(cell: CellOut, column: ColumnOut | undefined): StyledCell {
  if (typeof cell === "object" && cell !== null) return cell;
  const { format, style } = column ?? {};
  return { value: cell, ...(format && { format }), ...(style && { style }) };
}

function writeCell(target: Worksheet, row: number, column: number, cell: StyledCell, formats: Formats): void {
  const { value, format, style } = cell;
  if (value === null) {
    if (style) target.writeBlank(row, column, formats.get(style, format));
  } else if (typeof value === "number") writeNumber(target, row, column, value, { format, style }, formats);
  else if (typeof value === "boolean") {
    target.writeBooleanWithFormat(row, column, value, formats.get(style, undefined));
  } else writeText(target, row, column, value, style, formats);
}

interface Look {
  readonly format: CellFormat | undefined;
  readonly style: CellStyle | undefined;
}

function writeNumber(t: Worksheet, row: number, column: number, value: number, look: Look, formats: Formats): void {
  if (!Number.isFinite(value)) throw new RangeError(`workbookBytes: ${a1(row, column)} holds no finite number`);
  const serial = look.format === "date" ? serialOf(value, 1900) : value;
  // Excel knows no day before 1 January 1900.
  if (look.format === "date" && serial < 1) writeText(t, row, column, isoOf(value), look.style, formats);
  else t.writeNumberWithFormat(row, column, serial, formats.get(look.style, look.format));
}

function writeText(
  t: Worksheet,
  row: number,
  column: number,
  value: string,
  style: CellStyle | undefined,
  formats: Formats,
): void {
  const text = cellText(value);
  if (text === "") return;
  if (looksLikeFormula(text)) t.writeStringWithFormat(row, column, text, formats.quoted(style));
  else if (style) t.writeStringWithFormat(row, column, text, formats.get(style, undefined));
  else t.writeString(row, column, text);
}
