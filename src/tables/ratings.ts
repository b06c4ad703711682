import { type ProgressCategory, progressCategory } from "../records/services/progress-category";
import { NO_DAY, type Ratings } from "../records/records";
import { type CategoryCounts, summaryStatements } from "../statistics/summary-statements";
import type { TableContext } from "./context";
import { SIX_MONTHS_DAYS, servedDays } from "./ratings-service";
import type { Table, TableColumn, TableValue } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "outcome", label: "Outcome", unit: "text" },
  { key: "a", label: "a", unit: "children" },
  { key: "b", label: "b", unit: "children" },
  { key: "c", label: "c", unit: "children" },
  { key: "d", label: "d", unit: "children" },
  { key: "e", label: "e", unit: "children" },
  { key: "statement", label: "Summary statement", unit: "count" },
  { key: "count", label: "Count", unit: "children" },
  { key: "of", label: "Of", unit: "children" },
  { key: "percent", label: "Percent", unit: "percent" },
  { key: "coverage", label: "Coverage: rated of those who left", unit: "share" },
];

/** Table 6: progress categories and summary statements of children who left in the period (METHOD.md, section 6). */
export function ratings(context: TableContext): Table<"ratings"> {
  const { records } = context;
  if (records.ratings === null) throw new RangeError("ratings: the workbook has no Ratings");
  const leavers = leaversOf(context);
  const outcomes = [...new Set(records.ratings.outcome)].sort();
  const rated = outcomes.map((outcome) => categoriesOf(records.ratings as Ratings, outcome, leavers));
  return {
    id: "ratings",
    title: "Progress between entry and exit ratings",
    population: `Children who left in the period after ${SIX_MONTHS_DAYS} days or more of service and are not followed again by the as-of date`,
    columns: COLUMNS,
    rows: outcomes.flatMap((outcome, at) => outcomeRows(outcome, rated[at] as CategoryCounts, leavers.size)),
    notes: [
      ...RATINGS_NOTES,
      ...outcomes.map((outcome, at) => coverageNote(outcome, rated[at] as CategoryCounts, leavers.size)),
      otherNote(records.ratings, leavers, context),
    ],
  };
}

/** Definitions alone, without a count. */
export const RATINGS_NOTES: readonly string[] = [
  "Progress categories, from the ratings at entry and exit and whether any skill is new: a no improvement; b improved, not nearer to same-aged peers; c nearer to them; d reached them; e as they are at entry and exit. An exit rating of 6 or 7 is at the level of same-aged peers.",
  "Summary statement 1: of children who entered below the level of their peers, those who grew faster by exit, (c + d) / (a + b + c + d). Statement 2: those who left at that level, (d + e) / (a + b + c + d + e).",
  `Service is the days followed, over all enrolments; six months are ${SIX_MONTHS_DAYS} days. Of several rated rows of a child and outcome the one with the latest exit counts.`,
  "Children without both ratings, or without the answer to New since entry where the category hangs on it, are not in a to e. Those who leave unrated may differ from those who are rated.",
];

/** Children who left in the period after six months of service or more. */
export function leaversOf({ cohort, from, asOf }: TableContext): ReadonlySet<number> {
  const children = [...cohort.ids.keys()].filter((child) => {
    const last = cohort.following.lastDayIfLeft(child, from, asOf);
    return last !== null && servedDays(cohort.following, child, last) >= SIX_MONTHS_DAYS;
  });
  return new Set(children);
}

/** The category of each child rated; of several rated rows the one with the latest exit counts, the last of equals. */
export function categoryByChild(
  ratings: Ratings,
  outcome: string,
  leavers: ReadonlySet<number>,
): ReadonlyMap<number, ProgressCategory> {
  const latest = new Map<number, { exit: number; category: ProgressCategory }>();
  ratings.child.forEach((child, row) => {
    const category = ratings.outcome[row] === outcome && leavers.has(child) ? categoryOf(ratings, row) : null;
    const exit = ratings.exitDay[row] as number;
    if (category !== null && exit >= (latest.get(child)?.exit ?? NO_DAY)) latest.set(child, { exit, category });
  });
  return new Map([...latest].map(([child, { category }]) => [child, category]));
}

function categoriesOf(ratings: Ratings, outcome: string, leavers: ReadonlySet<number>): CategoryCounts {
  const categories = [...categoryByChild(ratings, outcome, leavers).values()];
  const count = (wanted: ProgressCategory) => categories.filter((category) => category === wanted).length;
  return [count("a"), count("b"), count("c"), count("d"), count("e")];
}

function categoryOf(ratings: Ratings, row: number): ProgressCategory | null {
  const [entry, exit] = [ratings.entryRating[row] as number, ratings.exitRating[row] as number];
  const isNew = ratings.newSinceEntry[row] as number;
  return entry === 0 || exit === 0 ? null : progressCategory(entry, exit, isNew < 0 ? null : isNew === 1);
}

function outcomeRows(outcome: string, counts: CategoryCounts, leavers: number): TableValue[][] {
  const coverage = leavers === 0 ? null : sum(counts) / leavers;
  return summaryStatements(counts).map(({ statement, count, of, percent }) => [
    outcome,
    ...counts,
    statement,
    count,
    of,
    percent,
    coverage,
  ]);
}

function coverageNote(outcome: string, counts: CategoryCounts, leavers: number): string {
  return `${outcome}: ${sum(counts)} rated of ${leavers} who left after six months of service or more.`;
}

function otherNote(ratings: Ratings, leavers: ReadonlySet<number>, { from, asOf }: TableContext): string {
  const others = [...ratings.child.keys()].filter((row) => {
    const exit = ratings.exitDay[row] as number;
    return exit >= from && exit <= asOf && !leavers.has(ratings.child[row] as number);
  });
  return `Exit ratings dated in the period that do not count, because the child is still followed, left outside the period or had less service: ${others.length}.`;
}

function sum(counts: CategoryCounts): number {
  return counts.reduce((total, count) => total + count, 0);
}
