import type { CellRange } from "../../../workbook/workbook";

/** `C12` to row 11, column 2; null where the text is no address. */
export function cellOf(text: string): { readonly row: number; readonly column: number } | null {
  const match = /^([A-Z]{1,3})([1-9][0-9]{0,6})$/.exec(text);
  if (match === null) return null;
  let column = 0;
  for (const letter of match[1] as string) column = column * 26 + letter.charCodeAt(0) - 64;
  return { row: Number(match[2]) - 1, column: column - 1 };
}

/** `C2:D9`, or one cell; null where the text is no range. */
export function rangeOf(text: string): CellRange | null {
  const [from, to = from, ...more] = text.split(":");
  const start = cellOf(from ?? "");
  const end = cellOf(to ?? "");
  if (start === null || end === null || more.length > 0) return null;
  if (start.row > end.row || start.column > end.column) return null;
  return { top: start.row, left: start.column, bottom: end.row, right: end.column };
}
