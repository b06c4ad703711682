import { poissonAtLeast, poissonAtMost, poissonExpectedWhereAtLeast, refuseLevel } from "./distributions";

export interface PoissonLimits {
  readonly lower: number;
  readonly upper: number;
}

export interface ObservedExpected {
  /** observed over expected; null, with the rest, where none is expected */
  readonly ratio: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** twice the smaller of the two exact tails, at most 1; both tails count the observed number itself */
  readonly p: number | null;
  readonly reason: string | null;
}

/**
 * Exact limits of a Poisson count: the expected numbers that neither tail, the count itself included, would reject.
 *
 * Source: Garwood (1936), Biometrika 28:437-442.
 *
 * @throws {RangeError} when the count is not a whole number of at least 0, or the level is not within 0 and 1
 */
export function poissonLimits(count: number, level: number): PoissonLimits {
  refuseLevel(level);
  refuseCount(count);
  const tail = (1 - level) / 2;
  return {
    lower: count === 0 ? 0 : poissonExpectedWhereAtLeast(count, tail),
    upper: poissonExpectedWhereAtLeast(count + 1, 1 - tail),
  };
}

/**
 * How many were observed for each one expected, with exact limits and an exact p.
 *
 * Source: Garwood (1936), as in Breslow & Day (1987), Statistical Methods in Cancer Research II, section 2.3.
 *
 * @throws {RangeError} when a number is negative, the observed is not whole, or the level is not within 0 and 1
 */
export function observedExpected(observed: number, expected: number, level: number): ObservedExpected {
  refuseExpected(expected);
  const { lower, upper } = poissonLimits(observed, level);
  if (expected === 0) return { ratio: null, lower: null, upper: null, p: null, reason: "none was expected" };
  const smallerTail = Math.min(poissonAtMost(observed, expected), poissonAtLeast(observed, expected));
  return {
    ratio: observed / expected,
    lower: lower / expected,
    upper: upper / expected,
    p: Math.min(1, 2 * smallerTail),
    reason: null,
  };
}

/**
 * Control limits of the ratio in a funnel plot: for each share q, the smallest count that is at most exceeded with
 * probability 1 - q, over the expected number. Null where none is expected.
 *
 * Source: Spiegelhalter (2005), Stat Med 24:1185-1202, without his interpolation between counts.
 *
 * @throws {RangeError} when the expected number is negative or q is not within 0 and 1
 */
export function funnelLimit(expected: number, q: number): number | null {
  refuseExpected(expected);
  refuseLevel(q);
  if (expected === 0) return null;
  return smallestCountAt(q, expected) / expected;
}

/** The smallest k with P(count <= k) >= q, by halving between 0 and a count that is large enough. */
export function smallestCountAt(q: number, expected: number): number {
  let low = 0;
  let high = Math.max(1, Math.ceil(expected));
  while (poissonAtMost(high, expected) < q) high *= 2;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (poissonAtMost(middle, expected) >= q) high = middle;
    else low = middle + 1;
  }
  return low;
}

function refuseCount(count: number): void {
  if (!Number.isInteger(count) || count < 0) throw new RangeError("an observed number is whole and not negative");
}

function refuseExpected(expected: number): void {
  if (!(expected >= 0 && expected < Infinity)) throw new RangeError("an expected number is finite and not negative");
}
