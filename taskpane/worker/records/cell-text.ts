import { CELL, kindAt, numberAt, stringAt } from "../../../src/workbook/cells";
import type { CellRange, WorkbookIn } from "../../../src/workbook/workbook";

/** The text of an id or a heading as it stands in a cell; "" where the cell holds none. */
export function textAt(workbook: WorkbookIn, sheet: string, row: number, column: number): string {
  const grid = workbook.sheets.find(({ name }) => name === sheet)?.grid;
  if (!grid) return "";
  const kind = kindAt(grid, row, column);
  if (kind === CELL.text) return stringAt(grid, row, column).trim();
  return kind === CELL.number ? String(numberAt(grid, row, column)) : "";
}

/** `C12` and `C2:C73` as rows and columns; null for anything else, such as the empty cell of a finding about a table. */
export function rangeAt(address: string): CellRange | null {
  const match = /^([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?$/.exec(address);
  if (!match) return null;
  const [, left, top, right, bottom] = match as unknown as [string, string, string, string?, string?];
  return {
    top: Number(top) - 1,
    left: columnNumber(left),
    bottom: Number(bottom ?? top) - 1,
    right: columnNumber(right ?? left),
  };
}

function columnNumber(letters: string): number {
  return Array.from(letters).reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}
