import { poissonAtLeast, poissonAtMost, poissonExpectedWhereAtLeast, refuseLevel } from "./distributions";
import { smallestCountAt } from "./poisson";

/** The counts between which a funnel holds a group that is like the others; a group outside is flagged. */
export interface FunnelCounts {
  readonly lowest: number;
  readonly highest: number;
}

/**
 * Counts at the two limits of a funnel with a level such as 0.95: for each tail q the smallest k with P(X <= k) >= q.
 *
 * Source: Spiegelhalter (2005), Stat Med 24:1185-1202.
 *
 * @throws {RangeError} when the expected number is not above 0 or the level is not within 0 and 1
 */
export function funnelCounts(expected: number, level: number): FunnelCounts {
  refuse(expected, level);
  const tail = (1 - level) / 2;
  return { lowest: smallestCountAt(tail, expected), highest: smallestCountAt(1 - tail, expected) };
}

/** How likely chance alone puts a group outside its funnel. Exact, so that it is below 1 - level for small groups. */
export function flaggedByLuck(expected: number, level: number): number {
  const { lowest, highest } = funnelCounts(expected, level);
  return poissonAtMost(lowest - 1, expected) + poissonAtLeast(highest + 1, expected);
}

/**
 * The smallest ratio above 1 that a two-sided exact test would find with the power asked for: the critical count is the
 * smallest k with P(X >= k) at most half the significance, and the ratio is the one under which k is reached that often.
 *
 * Source: Breslow & Day (1987), Statistical Methods in Cancer Research II, section 7.3.
 *
 * @throws {RangeError} when the expected number is not above 0, or significance or power is not within 0 and 1
 */
export function smallestDetectableRatio(expected: number, significance: number, power: number): number {
  refuse(expected, significance);
  refuseLevel(power);
  const critical = smallestCountAt(1 - significance / 2, expected) + 1;
  return poissonExpectedWhereAtLeast(critical, power) / expected;
}

function refuse(expected: number, level: number): void {
  if (!(expected > 0 && expected < Infinity)) throw new RangeError("a funnel needs an expected number above 0");
  refuseLevel(level);
}
