import { type CategoryOrOpen, progressCategory, type RatingScale } from "../records/services/progress-category";
import { NO_DAY, type Ratings } from "../records/records";
import { type CategoryCounts, summaryStatements } from "../statistics/summary-statements";
import type { TableContext } from "./context";
import { SIX_MONTHS_DAYS, servedDays } from "./ratings-service";
import type { Table, TableColumn, TableValue } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "outcome", label: "Outcome", unit: "text" },
  { key: "a", label: "a", unit: "children" },
  { key: "b", label: "b", unit: "children" },
  { key: "aOrB", label: "a or b", unit: "children" },
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
  const rated = outcomes.map((outcome) =>
    countsOf(categoryByChild(records.ratings as Ratings, outcome, leavers, scaleOf(context)).values()),
  );
  return {
    id: "ratings",
    title: "Progress from entry to exit",
    population: `Children who left in the period after ${SIX_MONTHS_DAYS} days or more in the program and did not come back by the as-of date`,
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
  "Progress categories, from the levels at entry and exit and whether the child gained any skill. a: gained none. b: gained some, not nearer to children of the same age. c: came nearer to them. d: reached them. e: was with them at entry and exit.",
  "Summary statement 1: of children who entered below the level of their peers, those who grew faster by exit, (c + d) / (a + b + c + d). Statement 2: those who left at that level, (d + e) / (a + b + c + d + e).",
  'Where "Gained any skill" is blank and the category depends on it, the child is "a or b". Such children are in both denominators, and their rows are listed among the problems found.',
  `Service is the days in the program, over all enrollments; six months are ${SIX_MONTHS_DAYS} days. Of several rated rows of a child and outcome the one with the latest exit counts.`,
  "Children without both levels are in none of a to e. Those who leave unrated may differ from those who are rated.",
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
  scale: RatingScale,
): ReadonlyMap<number, CategoryOrOpen> {
  const latest = new Map<number, { exit: number; category: CategoryOrOpen }>();
  ratings.child.forEach((child, row) => {
    const category = ratings.outcome[row] === outcome && leavers.has(child) ? categoryOf(ratings, row, scale) : null;
    const exit = ratings.exitDay[row] as number;
    if (category !== null && exit >= (latest.get(child)?.exit ?? NO_DAY)) latest.set(child, { exit, category });
  });
  return new Map([...latest].map(([child, { category }]) => [child, category]));
}

/** The program's own scale. */
export function scaleOf({ settings }: TableContext): RatingScale {
  return { levels: settings.ratingLevels, peerLevel: settings.peerLevel };
}

function countsOf(categories: Iterable<CategoryOrOpen>): CategoryCounts {
  const all = [...categories];
  const count = (wanted: CategoryOrOpen) => all.filter((category) => category === wanted).length;
  return { a: count("a"), b: count("b"), aOrB: count("a or b"), c: count("c"), d: count("d"), e: count("e") };
}

/** Null where a level is blank. */
function categoryOf(ratings: Ratings, row: number, scale: RatingScale): CategoryOrOpen | null {
  const [entry, exit] = [ratings.entryRating[row] as number, ratings.exitRating[row] as number];
  const gained = ratings.newSinceEntry[row] as number;
  return entry === 0 || exit === 0 ? null : progressCategory(entry, exit, gained < 0 ? null : gained === 1, scale);
}

function outcomeRows(outcome: string, counts: CategoryCounts, leavers: number): TableValue[][] {
  const coverage = leavers === 0 ? null : sum(counts) / leavers;
  return summaryStatements(counts).map(({ statement, count, of, percent }) => [
    outcome,
    ...[counts.a, counts.b, counts.aOrB, counts.c, counts.d, counts.e],
    statement,
    count,
    of,
    percent,
    coverage,
  ]);
}

function coverageNote(outcome: string, counts: CategoryCounts, leavers: number): string {
  return `${outcome}: ${sum(counts)} rated of ${leavers} who left after six months in the program or more.`;
}

function otherNote(ratings: Ratings, leavers: ReadonlySet<number>, { from, asOf }: TableContext): string {
  const others = [...ratings.child.keys()].filter((row) => {
    const exit = ratings.exitDay[row] as number;
    return exit >= from && exit <= asOf && !leavers.has(ratings.child[row] as number);
  });
  return `Exit levels dated in the period that do not count, because the child is still in the program, left outside the period or had less service: ${others.length}.`;
}

function sum(counts: CategoryCounts): number {
  return Object.values(counts).reduce((total: number, count: number) => total + count, 0);
}
