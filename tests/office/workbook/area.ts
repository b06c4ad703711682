import { RichError, invalidArgument } from "../protocol/rich-error";

/** Counted from 0, both ends in. */
export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

export const WHOLE_SHEET: Area = { top: 0, left: 0, bottom: MOST_ROWS - 1, right: MOST_COLUMNS - 1 };

export function areaOf(top: number, left: number, rows: number, columns: number): Area {
  if (rows < 1 || columns < 1 || top + rows > MOST_ROWS || left + columns > MOST_COLUMNS) {
    throw invalidArgument("Worksheet.GetRangeByIndexes");
  }
  return { top, left, bottom: top + rows - 1, right: left + columns - 1 };
}

/** `C2`, `C2:D9` and `$3:$5`. */
export function areaOfAddress(address: string): Area {
  const rows = /^\$?(\d+):\$?(\d+)$/.exec(address);
  if (rows) return { top: Number(rows[1]) - 1, left: 0, bottom: Number(rows[2]) - 1, right: MOST_COLUMNS - 1 };
  const cells = /^\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?$/i.exec(address);
  if (!cells) throw new RichError("InvalidArgument", "The address is not valid.", address);
  const [, left = "", top = "", right = left, bottom = top] = cells;
  return { top: Number(top) - 1, left: columnOf(left), bottom: Number(bottom) - 1, right: columnOf(right) };
}

export function within(area: Area, row: number, column: number): boolean {
  return row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;
}

export function overlap(a: Area, b: Area): boolean {
  return a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;
}

function columnOf(letters: string): number {
  return Array.from(letters.toUpperCase()).reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}
