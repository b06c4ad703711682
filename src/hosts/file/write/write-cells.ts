import type { Worksheet } from "wasm-xlsxwriter/web";
import { isoOf } from "../../../age/day";
import { serialOf } from "../../../age/serial";
import { a1 } from "../../../workbook/cells";
import type { CellOut, ColumnOut, SheetOut, StyledCell } from "../../../workbook/sheets";
import { cellText, looksLikeFormula } from "../../../workbook/sheet-text";
import type { Formats } from "./formats";

/**
 * Writes every cell as a value: a text is never read as a formula, whatever it starts with. Cells of one format that
 * stand below each other go in one call, since each call leaves an object behind for the garbage collector.
 */
export function writeCells(target: Worksheet, sheet: SheetOut, formats: Formats): void {
  for (const { top, left, bottom, right } of sheet.merged ?? []) {
    target.mergeRange(top, left, bottom, right, "", formats.get("text", undefined)).free();
  }
  const columnCount = sheet.rows.reduce((most, row) => Math.max(most, row.length), 0);
  for (let column = 0; column < columnCount; column += 1) writeColumn(target, sheet, column, formats);
}

function writeColumn(target: Worksheet, sheet: SheetOut, column: number, formats: Formats): void {
  const look = sheet.columns[column];
  let run: Run | null = null;
  sheet.rows.forEach((cells, row) => {
    const written = writtenCell(cells[column] ?? null, look, row, column);
    if (run && (written === null || written.key !== run.key)) {
      flush(target, column, run, formats);
      run = null;
    }
    if (written === null) return;
    if (run) run.values.push(written.value);
    else run = { ...written, row, values: [written.value] };
  });
  if (run) flush(target, column, run, formats);
}

type Value = string | number | boolean | undefined;

/** A value with the look it is written in; `undefined` is a blank that only shows its look. */
interface WrittenCell {
  readonly key: string;
  readonly value: Value;
  readonly style: StyledCell["style"] | undefined;
  readonly format: StyledCell["format"] | undefined;
  readonly quoted: boolean;
}

interface Run extends WrittenCell {
  readonly row: number;
  readonly values: Value[];
}

function flush(target: Worksheet, column: number, run: Run, formats: Formats): void {
  const format = run.quoted ? formats.quoted(run.style) : formats.get(run.style, run.format);
  if (run.value === undefined) {
    run.values.forEach((_, index) => target.writeBlank(run.row + index, column, format).free());
  } else if (!run.style && !run.format && !run.quoted) {
    target.writeColumn(run.row, column, run.values).free();
  } else {
    target.writeColumnWithFormat(run.row, column, run.values, format).free();
  }
}

function writtenCell(cell: CellOut, look: ColumnOut | undefined, row: number, column: number): WrittenCell | null {
  const whole = typeof cell === "object" && cell !== null;
  const value = whole ? cell.value : cell;
  const style = whole ? cell.style : look?.style;
  const format = whole ? cell.format : look?.format;
  if (value === null) return whole && style ? written(undefined, style, format) : null;
  if (typeof value === "number") return numberCell(value, style, format, row, column);
  if (typeof value === "boolean") return written(value, style, undefined);
  return textCell(value, style);
}

function numberCell(
  value: number,
  style: StyledCell["style"],
  format: StyledCell["format"],
  row: number,
  column: number,
): WrittenCell | null {
  if (!Number.isFinite(value)) throw new RangeError(`workbookBytes: ${a1(row, column)} holds no finite number`);
  if (format !== "date") return written(value, style, format);
  const serial = serialOf(value, 1900);
  // Excel knows no day before January 1, 1900.
  return serial < 1 ? textCell(isoOf(value), style) : written(serial, style, format);
}

function textCell(value: string, style: StyledCell["style"]): WrittenCell | null {
  const text = cellText(value);
  return text === "" ? null : written(text, style, undefined, looksLikeFormula(text));
}

function written(value: Value, style: StyledCell["style"], format: StyledCell["format"], quoted = false): WrittenCell {
  const kind = value === undefined ? "blank" : quoted ? "quoted" : "";
  return { key: `${style}/${format}/${kind}`, value, style, format, quoted };
}
