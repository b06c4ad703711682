import { counted } from "../../words/numbers";
import { type CountRange, HIDDEN, type ReleasedTable, type ReleasedValue } from "../release-table";

export type ReleasedRow = readonly ReleasedValue[];

/** Reads a released table by the keys of its columns. What is hidden, empty or not there is null: words are made of the rest. */
export interface ReleasedReader {
  readonly groupCount: number;
  at(row: ReleasedRow, key: string): ReleasedValue;
  text(row: ReleasedRow, key: string): string;
  number(row: ReleasedRow, key: string): number | null;
  /** A count in words, `1,204` or `11 to 20`. */
  count(row: ReleasedRow, key: string): string | null;
  /** `Site North, Therapist T01`; "" without grouping. */
  group(row: ReleasedRow): string;
}

export function readReleased({ columns }: ReleasedTable): ReleasedReader {
  const position = new Map(columns.map(({ key }, index) => [key, index]));
  const firsts = FIRST_KEYS.flatMap((key) => position.get(key) ?? []);
  const groupCount = firsts.length === 0 ? 0 : Math.min(...firsts);
  const at = (row: ReleasedRow, key: string): ReleasedValue => row[position.get(key) ?? -1] ?? null;
  return {
    groupCount,
    at,
    text: (row, key) => textOf(at(row, key)),
    number: (row, key) => {
      const value = at(row, key);
      return typeof value === "number" ? value : null;
    },
    count: (row, key) => countText(at(row, key)),
    group: (row) =>
      columns
        .slice(0, groupCount)
        .map(({ label }, index) => `${label} ${textOf(row[index] ?? null) || "not recorded"}`)
        .join(", "),
  };
}

/** The first column of each table that is its own; those before it group the rows. */
const FIRST_KEYS = ["skill", "quarter", "dimension", "step", "outcome"] as const;

export function isRange(value: ReleasedValue): value is CountRange {
  return typeof value === "object" && value !== null;
}

/** A count as words: a range with both its ends; null where it is hidden or no count. */
export function countText(value: ReleasedValue): string | null {
  if (typeof value === "number") return counted(value);
  return isRange(value) ? `${counted(value.from)} to ${counted(value.to)}` : null;
}

/** Any value as it is printed in a line of text. */
export function textOf(value: ReleasedValue): string {
  if (value === null) return "";
  return isRange(value) ? `${value.from} to ${value.to}` : String(value);
}

export function isHidden(value: ReleasedValue): boolean {
  return value === HIDDEN;
}
