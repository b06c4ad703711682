import { invalid } from "../failure";

/** A cell as a host hands it over. */
export type InCell = string | number | boolean | null;
export type InRange = readonly (readonly InCell[])[];

/** An argument as rows of cells: one cell is a range of one, an argument left out is one blank cell. */
export function rangeOf(argument: unknown, name: string): InRange {
  if (!Array.isArray(argument)) return [[cellOf(argument, name)]];
  const rows = argument as readonly unknown[];
  if (rows.length === 0) return [[null]];
  const width = rows.reduce<number>((widest, row) => Math.max(widest, Array.isArray(row) ? row.length : 0), 1);
  return rows.map((row) => {
    if (!Array.isArray(row)) throw invalid(`${name}: a range is rows of cells, such as [[1],[2]].`);
    return Array.from({ length: width }, (_, at) => cellOf(row[at], name));
  });
}

/** The cells of a column, or of one row. */
export function columnOf(argument: unknown, name: string): readonly InCell[] {
  const range = rangeOf(argument, name);
  if (range.length === 1) return range[0] as readonly InCell[];
  if ((range[0] as readonly InCell[]).length > 1) throw invalid(`${name}: give one column, not several.`);
  return range.map((row) => row[0] as InCell);
}

/** The one cell of an argument that takes no column; null where it was left out. */
export function singleOf(argument: unknown, name: string): InCell {
  const range = rangeOf(argument, name);
  if (range.length > 1 || (range[0] as readonly InCell[]).length > 1)
    throw invalid(`${name}: give one cell, not a range.`);
  const cell = (range[0] as readonly InCell[])[0] as InCell;
  return isBlank(cell) ? null : cell;
}

/** True for an argument left out, and for one blank cell. */
export function isLeftOut(argument: unknown): boolean {
  const range = rangeOf(argument, "");
  return range.length === 1 && range[0]?.length === 1 && isBlank(range[0][0] ?? null);
}

export function isBlank(cell: InCell): boolean {
  return cell === null || (typeof cell === "string" && /^[\s\u200b-\u200d\u2060\ufeff]*$/.test(cell));
}

/** For dates, ids, results and words, of which none is ever 0: some hosts hand an empty cell over as 0. */
export function isEmpty(cell: InCell): boolean {
  return cell === 0 || isBlank(cell);
}

function cellOf(value: unknown, name: string): InCell {
  if (value === null || value === undefined) return null;
  if (typeof value === "string" || typeof value === "boolean") return value;
  if (typeof value === "number" && Number.isFinite(value)) return value;
  throw invalid(`${name}: a cell can have a number, text, TRUE or FALSE, or nothing.`);
}
