import { HIDDEN, type ReleasedTable, type ReleasedValue } from "../../release/release-table";
import {
  countText,
  isRange,
  readReleased,
  type ReleasedReader,
  type ReleasedRow,
} from "../../release/words/read-released";
import { percentText } from "../../release/words/share-words";
import type { WordsContext } from "../../release/words/words-context";
import { ALL_SKILLS } from "../sheets/read-table";

/** One bar of a picture. Held back: drawn as a hatched gap with its word, never as nothing. */
export interface PictureBar {
  readonly panel: string;
  readonly label: string;
  readonly state: "shown" | "range" | "held back" | "none";
  /** Where it begins and ends; null where it is held back or not there. */
  readonly from: number | null;
  readonly to: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** What stands beside it: `53 of 85 (62.4%)`. */
  readonly words: string;
}

/** What the bars of a table are. */
export interface BarKind {
  readonly axis: string;
  /** The end of the axis; null: the largest value. */
  readonly end: number | null;
  readonly rows: (read: ReleasedReader, row: ReleasedRow) => boolean;
  readonly panel: (read: ReleasedReader, row: ReleasedRow, context: WordsContext) => string;
  readonly label: (read: ReleasedReader, row: ReleasedRow, context: WordsContext) => string;
  /** The column drawn, times so much. */
  readonly value: string;
  readonly times: number;
  readonly lower?: string;
  readonly upper?: string;
  /** Columns of the two numbers in words; none for counts. */
  readonly count?: string;
  readonly of?: string;
}

const all = () => true;
const none = () => "";
const skill = (read: ReleasedReader, row: ReleasedRow, { skills }: WordsContext) => {
  const id = read.text(row, "skill");
  return skills.find((each) => each.id === id)?.label || id;
};
const text = (key: string) => (read: ReleasedReader, row: ReleasedRow) => read.text(row, key) || "not recorded";

const SHARE = {
  axis: "% of children assessed",
  end: 100,
  times: 100,
  value: "shareMet",
  lower: "lower",
  upper: "upper",
};
const BAND: BarKind = {
  ...SHARE,
  axis: "% of child-skills assessed that are met",
  rows: (read, row) => read.text(row, "skill") === ALL_SKILLS,
  panel: text("area"),
  label: text("band"),
  count: "met",
  of: "assessed",
};

/** How each table is drawn. */
export const BAR_KINDS: Readonly<Record<string, BarKind>> = {
  "met-by-band": BAND,
  "met-by-band-left": BAND,
  "reached-by-age": {
    axis: "% of all children who had met it, at the least",
    end: 100,
    rows: all,
    panel: skill,
    label: (read, row) => `${read.text(row, "age")} months`,
    value: "lowest",
    times: 100,
    count: "met",
    of: "children",
  },
  "age-when-met": {
    axis: "months by which half had met it, by estimate (line: a quarter to three quarters)",
    end: null,
    rows: all,
    panel: none,
    label: skill,
    value: "p50",
    times: 1,
    lower: "p25",
    upper: "p75",
  },
  referrals: {
    axis: "referrals",
    end: null,
    rows: all,
    panel: text("dimension"),
    label: text("value"),
    value: "referrals",
    times: 1,
  },
  "referral-steps": {
    ...SHARE,
    axis: "% of referrals that could take the step",
    rows: all,
    panel: none,
    label: text("step"),
    value: "share",
    count: "count",
    of: "of",
  },
  ratings: {
    axis: "% of children",
    end: 100,
    rows: all,
    panel: text("outcome"),
    label: (read, row) => `statement ${read.text(row, "statement")}`,
    value: "percent",
    times: 1,
    count: "count",
    of: "of",
  },
  trend: { ...SHARE, rows: all, panel: skill, label: text("quarter"), count: "met", of: "assessed" },
};

export function barsOf(table: ReleasedTable, kind: BarKind, context: WordsContext): PictureBar[] {
  const read = readReleased(table);
  return table.rows
    .filter((row) => kind.rows(read, row))
    .map((row) => {
      const names = [kind.panel(read, row, context), read.group(row)].filter((name) => name !== "");
      return { panel: names.join(", "), label: kind.label(read, row, context), ...drawn(read, row, kind) };
    });
}

type Drawn = Omit<PictureBar, "panel" | "label">;

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
const HELD_BACK = "* held back";
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
  const percent = percentText(value * times);
  return `${read.count(row, count) ?? ""} of ${read.count(row, of) ?? ""} (${percent})`;
}
