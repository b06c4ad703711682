/**
 * Rates of strata, and what a group would have seen or shown had it been made up otherwise.
 *
 * Indirect: the standard's rates applied to the group's own time. Direct: the group's own shares, weighted as a stated
 * standard is made up.
 *
 * Source: Breslow & Day (1987), Statistical Methods in Cancer Research II, sections 2.1 to 2.3; Fleiss (1981), Statistical
 * Methods for Rates and Proportions, 2nd ed., chapter 14.
 */

/** Events per unit of time in each stratum; 0 where there was no time. */
export function stratumRates(counts: ArrayLike<number>, time: ArrayLike<number>): Float64Array {
  refuseUnequal(counts, time);
  return Float64Array.from({ length: counts.length }, (_, stratum) =>
    time[stratum]! > 0 ? counts[stratum]! / time[stratum]! : 0,
  );
}

/** Indirect: how many events the rates would give in the time of a group. */
export function expectedCount(time: ArrayLike<number>, rates: ArrayLike<number>): number {
  refuseUnequal(time, rates);
  let expected = 0;
  for (let stratum = 0; stratum < time.length; stratum += 1) expected += time[stratum]! * rates[stratum]!;
  return expected;
}

export interface StratumShare {
  readonly count: number;
  readonly of: number;
}

/**
 * Direct: the share of a group that is made up as `weights` say. Null where a stratum with weight holds nobody, or no
 * stratum has weight.
 *
 * @throws {RangeError} when the lists differ in length, or a weight is negative
 */
export function standardisedShare(strata: readonly StratumShare[], weights: readonly number[]): number | null {
  refuseUnequal(strata, weights);
  if (weights.some((weight) => !(weight >= 0))) throw new RangeError("standardisedShare: a weight is negative");
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  if (total === 0 || strata.some(({ of }, stratum) => of === 0 && weights[stratum]! > 0)) return null;
  return strata.reduce(
    (sum, { count, of }, stratum) => (weights[stratum] === 0 ? sum : sum + (weights[stratum]! / total) * (count / of)),
    0,
  );
}

function refuseUnequal(a: ArrayLike<unknown>, b: ArrayLike<unknown>): void {
  if (a.length !== b.length) throw new RangeError("strata and what belongs to them differ in number");
}
