import { CELL, type Grid } from "../../workbook/cells";
import { keyOf } from "./words";

/** What stands in a column of indexes where a cell names nothing that is known. */
export const ID_CODE = { blank: -1, unknown: -2, error: -3, noValue: -4, date: -5, leftOut: -6 } as const;

/** The index of a key, or `unknown` or `leftOut`. */
export type KeyLookup = (key: string, text: string) => number;

const UNSEEN = -100;

/** Reads a column of ids, each distinct text looked up once. A number equals its text; 0 is a blank. */
export function readIdColumn(grid: Grid, column: number | undefined, rows: Int32Array, lookup: KeyLookup): Int32Array {
  const ids = new Int32Array(rows.length).fill(ID_CODE.blank);
  const cells = column === undefined ? undefined : grid.columns[column];
  if (!cells) return ids;
  const byText = new Int32Array(grid.strings.length).fill(UNSEEN);
  const byNumber = new Map<number, number>();
  for (let i = 0; i < rows.length; i += 1) {
    const row = rows[i] as number;
    const kind = cells.kinds[row] ?? CELL.empty;
    const value = cells.values[row] as number;
    if (kind === CELL.text) {
      let id = byText[value] as number;
      if (id === UNSEEN) id = byText[value] = idOfText(grid.strings[value] as string, lookup);
      ids[i] = id;
    } else if (kind === CELL.number) ids[i] = idOfNumber(value, byNumber, lookup);
    else if (kind !== CELL.empty) ids[i] = idOfKind(kind, value, lookup);
  }
  return ids;
}

function idOfText(text: string, lookup: KeyLookup): number {
  const key = keyOf(text);
  return key === "" ? ID_CODE.blank : lookup(key, text);
}

function idOfNumber(value: number, byNumber: Map<number, number>, lookup: KeyLookup): number {
  if (value === 0) return ID_CODE.blank;
  let id = byNumber.get(value);
  if (id === undefined) {
    id = lookup(String(value), String(value));
    byNumber.set(value, id);
  }
  return id;
}

function idOfKind(kind: number, value: number, lookup: KeyLookup): number {
  if (kind === CELL.boolean) return idOfText(value === 1 ? "TRUE" : "FALSE", lookup);
  if (kind === CELL.error) return ID_CODE.error;
  return kind === CELL.date ? ID_CODE.date : ID_CODE.noValue;
}
