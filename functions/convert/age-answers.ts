import { estimateAgeWhenMet } from "../../src/statistics/age-when-met";
import { compareAges } from "../../src/statistics/compare-ages";
import { BOOTSTRAP_REPLICATES, PERCENTILES } from "../../src/tables/estimates";
import type { AnswerCell } from "../answer";
import { notEstimable, outOfRange } from "../failure";
import { type AgeArguments, ageColumnsOf } from "./age-columns";
import { columnOf, isEmpty, isLeftOut } from "./cells";
import { numberFrom } from "./values";

export interface Percentiles {
  readonly shares: readonly number[];
  readonly level: number;
  readonly seed: number;
}

/** Shares above 0 and at most 1; in a range a 0 is an empty cell. */
export function sharesOf(argument: unknown): readonly number[] {
  if (isLeftOut(argument)) return PERCENTILES;
  const cells = columnOf(argument, "shares");
  const shares = cells.filter((cell) => !isEmpty(cell)).map((cell) => numberFrom(cell, "shares"));
  if (shares.length === 0 || shares.some((share) => !(share > 0 && share <= 1))) {
    throw outOfRange("shares lie above 0 and go up to 1, such as 0.5.");
  }
  return shares;
}

/** Share, Age, Lower, Upper, Method: a row for each share. */
export function percentileCells(ages: AgeArguments, { shares, level, seed }: Percentiles): AnswerCell[][] {
  const columns = ageColumnsOf(ages);
  if (columns.after.length === 0) throw notEstimable("No row has an age.");
  const estimate = estimateAgeWhenMet({ ...columns, shares, level, replicates: BOOTSTRAP_REPLICATES, seed });
  const notReached = notEstimable(estimate.reason ?? "The share is not reached.");
  const noLimit = notEstimable("The limit is out of reach.");
  return estimate.percentiles.map(({ share, age, lower, upper }) => [
    share,
    age ?? notReached,
    lower ?? noLimit,
    upper ?? noLimit,
    estimate.method ?? notReached,
  ]);
}

/** From, To, Mass, Share met by To: a row for each interval that holds mass; To is blank beyond the last look. */
export function curveCells(ages: AgeArguments): AnswerCell[][] {
  const columns = ageColumnsOf(ages);
  if (columns.after.length === 0) throw notEstimable("No row has an age.");
  return estimateAgeWhenMet({ ...columns, shares: [] }).curve.map(({ from, to, mass, shareTo }) => [
    from,
    to,
    mass,
    shareTo,
  ]);
}

/** Chi-squared, Degrees of freedom, p, Method. */
export function comparisonCells(ages: AgeArguments): AnswerCell[][] {
  const { group, ...columns } = ageColumnsOf(ages);
  if (group.length === 0) throw notEstimable("No row has an age.");
  const { chiSquared, degreesOfFreedom, p, method, reason } = compareAges(columns, group);
  if (chiSquared === null) throw notEstimable(`Cannot be compared: ${reason}.`);
  return [[chiSquared, degreesOfFreedom, p, method]];
}
