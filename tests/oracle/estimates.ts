import type { OracleInput, OracleRow } from "./input";
import { oracleTables } from "./oracle-tables";
import { percentile, shareBy, slowNpmle, type SlowNpmle } from "./slow-npmle";

const MEAN_MONTH_DAYS = 30.4375;

/**
 * What tables 2 and 3 estimate, group columns and `skill` (and `age`) first: null where nobody met the skill. An exact or
 * right-censored sample needs no formula of its own here: the same estimate is then Kaplan and Meier's.
 */
export function oracleEstimates(
  input: OracleInput,
): Record<"age-when-met" | "reached-by-age" | "since-enrollment", OracleRow[]> {
  const tables = oracleTables(input);
  const groupOf = (row: OracleRow): OracleRow =>
    Object.fromEntries(input.settings.by.map((by) => [by, row[by] ?? null]));
  const estimateOf = (row: OracleRow): SlowNpmle | null => {
    const same = { ...groupOf(row), skill: row["skill"] ?? null };
    return npmleOf(
      tables["age-intervals"].filter((each) => Object.entries(same).every(([key, value]) => each[key] === value)),
    );
  };
  return {
    "age-when-met": tables["age-when-met"].map((row) => {
      const closes = input.skills.find((skill) => skill.skill === row["skill"])?.closes ?? null;
      return { ...groupOf(row), skill: row["skill"] ?? null, ...agesOf(estimateOf(row), closes) };
    }),
    "reached-by-age": tables["reached-by-age"].map((row) => {
      const share = shareAt(estimateOf(row), Number(row["age"]));
      return { ...groupOf(row), skill: row["skill"] ?? null, age: row["age"] ?? null, estimate: share };
    }),
    "since-enrollment": tables["since-enrollment"].map(({ skill = null }) => {
      const estimate = npmleOf(tables["enrolment-intervals"].filter((each) => each["skill"] === skill));
      const weeks = (p: number): number | null => inUnit(estimate, p, 7);
      return { skill, p25Weeks: weeks(0.25), p50Weeks: weeks(0.5), p75Weeks: weeks(0.75) };
    }),
  };
}

function npmleOf(rows: readonly OracleRow[]): SlowNpmle | null {
  if (rows.every((row) => row["by"] === null)) return null;
  return slowNpmle(rows.map(({ after, by = null }) => ({ after: Number(after), by: by === null ? null : Number(by) })));
}

function agesOf(estimate: SlowNpmle | null, closes: number | null): OracleRow {
  const months = (p: number): number | null => inUnit(estimate, p, MEAN_MONTH_DAYS);
  return {
    p10: months(0.1),
    p25: months(0.25),
    p50: months(0.5),
    p75: months(0.75),
    p90: months(0.9),
    shareByClose: closes === null ? null : shareAt(estimate, closes),
  };
}

function shareAt(estimate: SlowNpmle | null, months: number): number | null {
  return estimate === null ? null : shareBy(estimate, months * MEAN_MONTH_DAYS);
}

function inUnit(estimate: SlowNpmle | null, p: number, days: number): number | null {
  const age = estimate === null ? null : percentile(estimate, p);
  return age === null ? null : age / days;
}
