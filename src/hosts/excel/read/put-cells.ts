/// <reference types="office-js" />
import { CELL } from "../../../workbook/cells";
import type { CellSink } from "./cell-sink";
import { isDateCode } from "../../../workbook/date-formats";

/** A block of cells as `Range` gives it: three arrays of one shape. */
export interface Block {
  readonly values: readonly (readonly unknown[])[];
  readonly valueTypes: readonly (readonly (Excel.RangeValueType | string)[])[];
  readonly numberFormat: readonly (readonly unknown[])[];
}

/**
 * Hands a block on, cell by cell. The value type alone says whether a cell is empty: hosts differ in the value that an
 * empty cell shows, and 0 is one of them.
 */
export function putCells(block: Block, top: number, left: number, sink: CellSink): void {
  block.values.forEach((cells, r) => {
    const types = block.valueTypes[r] ?? [];
    const formats = block.numberFormat[r] ?? [];
    cells.forEach((value, c) => {
      if (types[c] !== "Empty") putCell(value, types[c], formats[c], top + r, left + c, sink);
    });
  });
}

function putCell(
  value: unknown,
  type: string | undefined,
  format: unknown,
  r: number,
  c: number,
  sink: CellSink,
): void {
  if (typeof value === "number") sink.number(r, c, value, isDate(format) ? CELL.date : CELL.number);
  else if (typeof value === "boolean") sink.number(r, c, value ? 1 : 0, CELL.boolean);
  else if (typeof value === "string" && value !== "") sink.text(r, c, value, type === "Error" ? CELL.error : CELL.text);
}

const known = new Map<string, boolean>();

function isDate(format: unknown): boolean {
  if (typeof format !== "string" || format === "General") return false;
  const answer = known.get(format) ?? isDateCode(format);
  known.set(format, answer);
  return answer;
}
