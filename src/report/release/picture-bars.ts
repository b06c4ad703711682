import { HIDDEN, type ReleasedTable, type ReleasedValue } from "../../release/release-table";
import { LEAST_ROUNDED_BASE } from "../../release/protect";
import {
  countText,
  isRange,
  readReleased,
  type ReleasedReader,
  type ReleasedRow,
} from "../../release/words/read-released";
import { isFew, percentText } from "../../release/words/share-words";
import type { WordsContext } from "../../release/words/words-context";
import type { BarKind } from "./bar-kinds";

/** One bar of a picture. What is held back has no bar: a line of words below the panel names it. */
export interface PictureBar {
  /** The row of the table. */
  readonly row: number;
  readonly panel: string;
  readonly label: string;
  readonly state: "shown" | "range" | "held back" | "none";
  /** Where it begins and ends; null where it is held back or not there. */
  readonly from: number | null;
  readonly to: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** What stands beside it: `53 of 85 (62.4%)`, and `12 of 19`. */
  readonly words: string;
}

export function barsOf(table: ReleasedTable, kind: BarKind, context: WordsContext): PictureBar[] {
  const read = readReleased(table);
  return table.rows.flatMap((row, at) => {
    if (!kind.rows(read, row, context)) return [];
    const names = [kind.panel(read, row, context), read.group(row)].filter((name) => name !== "");
    return [
      { row: at, panel: names.join(", "), label: kind.label(read, row, context), ...drawn(read, row, kind, context) },
    ];
  });
}

type Drawn = Omit<PictureBar, "row" | "panel" | "label">;

function drawn(read: ReleasedReader, row: ReleasedRow, kind: BarKind, context: WordsContext): Drawn {
  const value = kind.value === "" ? shareOf(read, row, kind, context) : read.at(row, kind.value);
  if (value === HIDDEN || isHeldBack(read, row, kind)) return { ...EMPTY, state: "held back", words: HELD_BACK };
  if (isRange(value))
    return { ...EMPTY, state: "range", from: value.from, to: value.to, words: countText(value) ?? "" };
  if (typeof value !== "number") return { ...EMPTY, state: "none", words: countsOf(read, row, kind) ?? NO_FIGURE };
  const [lower, upper] = [kind.lower, kind.upper].map((key) => (key === undefined ? null : read.number(row, key)));
  const limits =
    typeof lower === "number" && typeof upper === "number"
      ? { lower: lower * kind.times, upper: upper * kind.times }
      : { lower: null, upper: null };
  return { state: "shown", from: 0, to: value * kind.times, ...limits, words: wordsOf(read, row, kind, value) };
}

/** The share of the two numbers, where both are shown and a percent of that base may stand. */
function shareOf(read: ReleasedReader, row: ReleasedRow, kind: BarKind, { rule }: WordsContext): ReleasedValue {
  const [count, of] = [kind.count, kind.of].map((key) => read.number(row, key ?? ""));
  if (typeof count !== "number" || typeof of !== "number" || of === 0) return null;
  return rule.method === "round" && of < LEAST_ROUNDED_BASE ? null : count / of;
}

const EMPTY = { from: null, to: null, lower: null, upper: null };
const HELD_BACK = "held back";
const NO_FIGURE = "no figure";

/** A percent is not drawn without both its numbers. */
function isHeldBack(read: ReleasedReader, row: ReleasedRow, { count, of }: BarKind): boolean {
  return [count, of].some((key) => key !== undefined && isHiddenValue(read.at(row, key)));
}

function isHiddenValue(value: ReleasedValue): boolean {
  return value === HIDDEN || isRange(value);
}

function wordsOf(read: ReleasedReader, row: ReleasedRow, kind: BarKind, value: number): string {
  const counts = countsOf(read, row, kind);
  if (counts === null) return countText(value) ?? kind.value;
  return isFew(read, row, kind.of ?? "") ? counts : `${counts} (${percentText(value * kind.times)})`;
}

function countsOf(read: ReleasedReader, row: ReleasedRow, { count, of }: BarKind): string | null {
  if (count === undefined || of === undefined) return null;
  const [first, second] = [read.count(row, count), read.count(row, of)];
  return first === null || second === null ? null : `${first} of ${second}`;
}
