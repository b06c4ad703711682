import type { ReleasedReader, ReleasedRow } from "../../release/words/read-released";
import type { WordsContext } from "../../release/words/words-context";
import type { ReleasableId } from "../../tables/table";
import { ALL_SKILLS } from "../sheets/read-table";

/** What the bars of a table are. */
export interface BarKind {
  readonly axis: string;
  /** The end of the axis; null: the largest value. */
  readonly end: number | null;
  readonly rows: (read: ReleasedReader, row: ReleasedRow, context: WordsContext) => boolean;
  readonly panel: (read: ReleasedReader, row: ReleasedRow, context: WordsContext) => string;
  readonly label: (read: ReleasedReader, row: ReleasedRow, context: WordsContext) => string;
  /** The column drawn, times so much; "" for the share of the two numbers, where the table has no column of it. */
  readonly value: string;
  readonly times: number;
  readonly lower?: string;
  readonly upper?: string;
  /** Columns of the two numbers in words; none for counts. */
  readonly count?: string;
  readonly of?: string;
}

/** All rows, or those of the skills that were chosen. */
const all = (read: ReleasedReader, row: ReleasedRow, { pictured }: WordsContext) =>
  pictured === undefined || read.text(row, "skill") === "" || pictured.includes(read.text(row, "skill"));
const none = () => "";
const skill = (read: ReleasedReader, row: ReleasedRow, { skills }: WordsContext) => {
  const id = read.text(row, "skill");
  return skills.find((each) => each.id === id)?.label || id;
};
const text = (key: string) => (read: ReleasedReader, row: ReleasedRow) => read.text(row, key) || "not recorded";

const SHARE = {
  axis: "% of children checked",
  end: 100,
  times: 100,
  value: "shareMet",
  lower: "lower",
  upper: "upper",
};
const BAND: BarKind = {
  ...SHARE,
  axis: "% met of up-to-date checks",
  rows: (read, row, { pictured }) =>
    pictured === undefined ? read.text(row, "skill") === ALL_SKILLS : pictured.includes(read.text(row, "skill")),
  panel: (read, row, context) =>
    read.text(row, "skill") === ALL_SKILLS ? read.text(row, "area") : skill(read, row, context),
  label: text("band"),
  count: "met",
  of: "assessed",
};

/** The two federal summary statements for early intervention (Part C), as labels. */
const STATEMENT_LABELS = new Map([
  ["1", "grew faster than before"],
  ["2", "at the level of their age at exit"],
]);

/** How each table is drawn. */
export const BAR_KINDS: Readonly<Record<ReleasableId, BarKind>> = {
  "met-by-band": BAND,
  "met-by-band-left": BAND,
  "reached-by-age": {
    axis: "% of all children who had met it, at least",
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
    axis: "months of age by which an estimated half had met it (line: a quarter to three quarters)",
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
    label: (read, row) => STATEMENT_LABELS.get(read.text(row, "statement")) ?? "",
    value: "percent",
    times: 1,
    count: "count",
    of: "of",
  },
  trend: { ...SHARE, rows: all, panel: skill, label: text("quarter"), count: "met", of: "assessed" },
};

/** How the figures of a question are drawn, where that is not as their table is. */
export const ANSWER_KINDS: Readonly<Record<string, BarKind>> = {
  children: {
    axis: "children in the program",
    end: null,
    rows: all,
    panel: none,
    label: text("band"),
    value: "children",
    times: 1,
  },
  "plans-in-time": {
    axis: "% of referrals that can be judged",
    end: 100,
    rows: all,
    panel: none,
    label: () => "plan within 45 days",
    value: "",
    times: 100,
    count: "within45",
    of: "of45",
  },
};
