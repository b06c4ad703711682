import { median } from "simple-statistics";
import { DAYS_PER_MEAN_MONTH } from "../age/months";
import type { AgeWhenMetEstimate } from "../statistics/age-when-met";
import { groupOfEverFollowed } from "./context";
import type { AgeEstimates } from "./estimates";
import type { SkillIntervals } from "./intervals";
import type { Table, TableColumn, TableValue } from "./table";

const MEAN_MONTHS = "months (mean length)" as const;

export const AGE_WHEN_MET_COLUMNS: readonly TableColumn[] = [
  { key: "skill", label: "Skill", unit: "text" },
  { key: "children", label: "Children", unit: "children" },
  { key: "hadAtFirstLook", label: "Already met at first check", unit: "children" },
  { key: "interval", label: "Met between two checks", unit: "children" },
  { key: "notMet", label: "Not met by last check", unit: "children" },
  { key: "method", label: "Method", unit: "text" },
  { key: "largestGradient", label: "Largest gradient", unit: "number" },
  { key: "p10", label: "10% had met it at", unit: MEAN_MONTHS },
  { key: "p25", label: "25% had met it at", unit: MEAN_MONTHS },
  { key: "p50", label: "Half had met it at", unit: MEAN_MONTHS },
  { key: "p50Lower", label: "Half: lower limit", unit: MEAN_MONTHS },
  { key: "p50Upper", label: "Half: upper limit", unit: MEAN_MONTHS },
  { key: "p75", label: "75% had met it at", unit: MEAN_MONTHS },
  { key: "p90", label: "90% had met it at", unit: MEAN_MONTHS },
  { key: "recordedMedian", label: "Median of recorded dates", unit: MEAN_MONTHS },
  { key: "opens", label: "Window opens", unit: "months" },
  { key: "closes", label: "Window closes", unit: "months" },
  { key: "shareByClose", label: "Share met by closing", unit: "share" },
  { key: "shareByCloseLower", label: "Share by closing: lower limit", unit: "share" },
  { key: "shareByCloseUpper", label: "Share by closing: upper limit", unit: "share" },
  { key: "expectedShare", label: "Share the source expects by closing", unit: "share" },
  { key: "reason", label: "Why not estimated", unit: "text" },
];

export const AGE_WHEN_MET_TITLE = "Age when each skill was met";
export const AGE_WHEN_MET_POPULATION = "Children ever in the program and checked for the skill";

/** Table 3: the age when each skill was met (METHOD.md, section 6). */
export function ageWhenMet(estimates: AgeEstimates): Table<"age-when-met"> {
  const { context } = estimates;
  return {
    id: "age-when-met",
    title: AGE_WHEN_MET_TITLE,
    population: AGE_WHEN_MET_POPULATION,
    columns: [...context.groups.columns, ...AGE_WHEN_MET_COLUMNS],
    rows: rowsAndGroups(estimates).map(({ group, skill, values }) => [...values, ...figures(estimates, group, skill)]),
    notes: [
      "Visits only bracket the day a skill was met, so the percentiles come from the nonparametric maximum likelihood estimate for intervals; where every age is exact or not yet reached, from Kaplan-Meier.",
      "The median of recorded dates beside it shows how far the dates of visits lag behind. Ages estimated here are in mean-length months of 30.4375 days.",
      "Limits of the interval estimate are percentile-bootstrap limits from the stated seed: approximate, by convention.",
      "The share that the source expects by the close says what kind of window it is: 0.99 for windows from the 1st to the 99th percentile, 0.75 for ages by which 75% or more do it, empty where the source gives none. Never read these as one kind: being past a window of 0.75 is not unusual for one child.",
    ],
  };
}

/** Group and skill of each row, in the order of the rows. */
export function rowsAndGroups(estimates: AgeEstimates) {
  const { cohort, groups } = estimates.context;
  const groupOf = groupOfEverFollowed(estimates.context);
  return groups.values.flatMap((values, group) =>
    groupOf.includes(group) ? cohort.skills.map((_, skill) => ({ group, skill, values })) : [],
  );
}

function figures(estimates: AgeEstimates, group: number, index: number): TableValue[] {
  const skill = estimates.context.cohort.skills[index]!;
  const intervals = estimates.intervalsOf(group, index);
  const estimate = estimates.estimateOf(group, index);
  return [
    skill.id,
    intervals.after.length,
    intervals.hadAtFirstLook,
    intervals.interval,
    intervals.notMet,
    estimate.method,
    estimate.largestGradient,
    ...percentiles(estimate),
    recordedMedian(intervals),
    skill.opensMonths,
    skill.closesMonths,
    ...shareByClose(estimates, estimate, skill.closesMonths),
    skill.expectedShare,
    estimate.reason,
  ];
}

function percentiles({ percentiles }: AgeWhenMetEstimate): TableValue[] {
  const [p10, p25, p50, p75, p90] = percentiles;
  return [p10?.age, p25?.age, p50?.age, p50?.lower, p50?.upper, p75?.age, p90?.age].map(inMeanMonths);
}

function recordedMedian({ by }: SkillIntervals): TableValue {
  const seen = by.filter(Number.isFinite);
  return seen.length === 0 ? null : inMeanMonths(median(seen));
}

function shareByClose(estimates: AgeEstimates, estimate: AgeWhenMetEstimate, closes: number | null): TableValue[] {
  const at = closes === null ? undefined : estimate.shareBy[estimates.context.settings.edges.length];
  return [at?.share ?? null, at?.lower ?? null, at?.upper ?? null];
}

function inMeanMonths(days: number | null | undefined): number | null {
  return days === null || days === undefined ? null : days / DAYS_PER_MEAN_MONTH;
}
