import { HIDDEN, type ReleasedTable, type ReleasedValue } from "../../release/release-table";
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
    return [{ row: at, panel: names.join(", "), label: kind.label(read, row, context), ...drawn(read, row, kind) }];
  });
}

type Drawn = Omit<PictureBar, "row" | "panel" | "label">;

function drawn(read: ReleasedReader, row: ReleasedRow, kind: BarKind): Drawn {
  const value = read.at(row, kind.value);
  if (value === HIDDEN || isHeldBack(read, row, kind)) return { ...EMPTY, state: "held back", words: HELD_BACK };
  if (isRange(value))
    return { ...EMPTY, state: "range", from: value.from, to: value.to, words: countText(value) ?? "" };
  if (typeof value !== "number") return { ...EMPTY, state: "none", words: NO_FIGURE };
  const [lower, upper] = [kind.lower, kind.upper].map((key) => (key === undefined ? null : read.number(row, key)));
  const limits =
    typeof lower === "number" && typeof upper === "number"
      ? { lower: lower * kind.times, upper: upper * kind.times }
      : { lower: null, upper: null };
  return { state: "shown", from: 0, to: value * kind.times, ...limits, words: wordsOf(read, row, kind, value) };
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

function wordsOf(
  read: ReleasedReader,
  row: ReleasedRow,
  { count, of, times, value: key }: BarKind,
  value: number,
): string {
  if (count === undefined || of === undefined) return countText(value) ?? key;
  const counts = `${read.count(row, count) ?? ""} of ${read.count(row, of) ?? ""}`;
  return isFew(read, row, of) ? counts : `${counts} (${percentText(value * times)})`;
}
