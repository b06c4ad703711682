import { HIDDEN, type ReleasedTable, type ReleasedValue } from "../release-table";
import type { EarlierTable } from "./earlier-report";
import { readReleased } from "./read-released";

/** The earlier table in the columns of ours, its small counts and their remainders hidden, its ages in whole months. */
export function protectedCopy(table: ReleasedTable, earlier: EarlierTable, minimum: number): ReleasedTable {
  const at = table.columns.map(({ key }) => earlier.columns.findIndex((column) => column.key === key));
  const rows = earlier.rows.map((row) => {
    const copy = at.map((index, column) => protectedValue(row[index] ?? null, table.columns[column]!, minimum));
    return withoutRemainders(table, copy, minimum);
  });
  return { ...table, rows };
}

const COUNT_UNITS: ReadonlySet<string> = new Set(["children", "child-skills", "count", "pairs"]);

function protectedValue(
  value: ReleasedValue,
  { key, unit }: ReleasedTable["columns"][number],
  minimum: number,
): ReleasedValue {
  if (typeof value !== "number") return value;
  if (unit === "months (mean length)") return Math.round(value);
  return COUNT_UNITS.has(unit) && key !== "statement" && isSmall(value, minimum) ? HIDDEN : value;
}

const PAIRS: readonly (readonly [count: string, of: string])[] = [
  ["met", "assessed"],
  ["met", "children"],
  ["count", "of"],
  ["within45", "of45"],
];

function withoutRemainders(table: ReleasedTable, row: readonly ReleasedValue[], minimum: number): ReleasedValue[] {
  const read = readReleased(table);
  const hidden = PAIRS.filter(([count, of]) => {
    const [part, whole] = [read.number(row, count), read.number(row, of)];
    return part !== null && whole !== null && isSmall(whole - part, minimum);
  }).map(([count]) => count);
  return row.map((value, at) => (hidden.includes(table.columns[at]?.key ?? "") ? HIDDEN : value));
}

function isSmall(count: number, minimum: number): boolean {
  return count >= 1 && count < minimum;
}
