import { DAYS_PER_MEAN_MONTH } from "../../age/months";
import { estimateAgeWhenMet } from "../../statistics/age-when-met";
import { AGE_WHEN_MET_COLUMNS, AGE_WHEN_MET_POPULATION, AGE_WHEN_MET_TITLE } from "../../tables/age-when-met";
import { PERCENTILES } from "../../tables/estimates";
import type { TableValue } from "../../tables/table";
import type { DraftTable } from "../release-table";
import type { AttainedCells } from "./attained-cells";
import { ATTAINED, type Watched } from "./attained-tally";
import type { Drafting } from "./drafting";
import { draftRow } from "./entries";
import type { EverFollowed } from "./ever-followed";

const KEPT = [
  "skill",
  "children",
  "hadAtFirstLook",
  "interval",
  "notMet",
  "p10",
  "p25",
  "p50",
  "p75",
  "p90",
  "opens",
  "closes",
  "expectedShare",
];
const PERCENTILE_KEYS = ["p10", "p25", "p50", "p75", "p90"];

/** Table 3 as it may leave: counts, and percentiles in whole months where enough children were still without the skill. */
export function draftAgeWhenMet(drafting: Drafting, ever: EverFollowed, cells: AttainedCells): DraftTable {
  const { context, builder } = drafting;
  const columns = [...context.groups.columns, ...AGE_WHEN_MET_COLUMNS.filter(({ key }) => KEPT.includes(key))];
  const rows = ever.groups().flatMap(({ group, scope }) =>
    context.cohort.skills.map(({ id, opensMonths, closesMonths, expectedShare }, skill) => {
      cells.addRow(scope, skill);
      const [children, hadAtFirstLook, interval, notMet] = ROW.map((column) => cells.cell(scope, skill, column));
      const counts = { children: children!, hadAtFirstLook: hadAtFirstLook!, interval: interval!, notMet: notMet! };
      const figures = Object.fromEntries(PERCENTILE_KEYS.map((key) => [key, [counts.children]]));
      const values: TableValue[] = [
        ...(context.groups.values[group] ?? []),
        id,
        ...Object.values(counts).map((cell) => builder.at(cell).count),
        ...percentiles(cells.watched(scope, skill), context.settings.minimumCell),
        ...[opensMonths, closesMonths, expectedShare],
      ];
      return draftRow(builder, columns, values, { counts, figures });
    }),
  );
  ever.totals().forEach((scope) => cells.addTotals(scope));
  return {
    id: "age-when-met",
    title: AGE_WHEN_MET_TITLE,
    population: AGE_WHEN_MET_POPULATION,
    columns,
    rows,
    notes: notesOf(context.settings.minimumCell),
  };
}

const ROW = [ATTAINED.children, ATTAINED.hadAtFirstLook, ATTAINED.interval, ATTAINED.notMet];

/** Whole mean-length months; null where the share is not reached, or too few families have a child still without the skill. */
function percentiles(watched: readonly Watched[], minimum: number): (number | null)[] {
  const estimate = estimateAgeWhenMet({
    after: Float64Array.from(watched, ({ after }) => after),
    by: Float64Array.from(watched, ({ by }) => by),
    shares: PERCENTILES,
  });
  return PERCENTILES.map((_, at) => {
    const age = estimate.percentiles[at]?.age ?? null;
    return age === null || stillWithout(watched, age) < minimum ? null : Math.round(age / DAYS_PER_MEAN_MONTH);
  });
}

/** Families with a child known to be without the skill at an age. */
function stillWithout(watched: readonly Watched[], ageDays: number): number {
  return new Set(watched.filter(({ after, by }) => after >= ageDays && by > ageDays).map(({ family }) => family)).size;
}

function notesOf(minimum: number): string[] {
  return [
    "Visits only bracket the day a skill was met, so the percentiles come from the nonparametric maximum likelihood estimate for intervals; where every age is exact or not yet reached, from Kaplan-Meier.",
    `Percentiles are in whole months of 30.4375 days, and given only where children of at least ${minimum} families were known to be still without the skill at that age. No limits leave with them.`,
    "The share that the source expects by the close says what kind of window it is: 0.99 for windows from the 1st to the 99th percentile, 0.75 for ages by which 75% or more do it, empty where the source gives none. Being past a window of 0.75 is not unusual for one child.",
  ];
}
