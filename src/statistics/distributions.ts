import betaCdf from "@stdlib/stats-base-dists-beta-cdf";
import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import binomialCdf from "@stdlib/stats-base-dists-binomial-cdf";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantileOf from "@stdlib/stats-base-dists-normal-quantile";
import { gammaAt, gammaAtLeast, gammaAtMost } from "./gamma-tail";

/**
 * The distributions that the other chapters use, in the words they use. The numbers are stdlib's, but for large gamma
 * tails (`gamma-tail.ts`). Upper tails are asked for as such, since 1 less a number close to 1 loses its digits.
 */
export function normalQuantile(share: number): number {
  return normalQuantileOf(share, 0, 1);
}

export function normalShareBelow(z: number): number {
  return normalCdf(z, 0, 1);
}

/** How far from the middle a standard normal number stays with probability `level`: 1.96 for 0.95. */
export function normalHalfWidth(level: number): number {
  refuseLevel(level);
  return normalQuantile(1 - (1 - level) / 2);
}

/** P(X >= value) for a chi-squared number: the upper tail of a gamma number with half the degrees of freedom. */
export function chiSquaredTail(value: number, degreesOfFreedom: number): number {
  return value <= 0 ? 1 : gammaAtLeast(value / 2, degreesOfFreedom / 2);
}

/** P(count <= k) of a Poisson number: the next arrival comes later. */
export function poissonAtMost(k: number, expected: number): number {
  return k < 0 ? 0 : gammaAtLeast(expected, k + 1);
}

/** P(count >= k) of a Poisson number: the gamma distribution of the k-th arrival. */
export function poissonAtLeast(k: number, expected: number): number {
  return k <= 0 ? 1 : gammaAtMost(expected, k);
}

/** The expected count at which P(count >= k) is `share`. */
export function poissonExpectedWhereAtLeast(k: number, share: number): number {
  return gammaAt(share, k);
}

export function binomialAtMost(k: number, of: number, share: number): number {
  return binomialCdf(k, of, share);
}

/** P(count >= k) of `of` trials: the beta distribution of the k-th smallest share. */
export function binomialAtLeast(k: number, of: number, share: number): number {
  if (k <= 0) return 1;
  return k > of ? 0 : betaCdf(share, k, of - k + 1);
}

/** The share at which P(count >= k of `of`) is `probability`. */
export function binomialShareWhereAtLeast(k: number, of: number, probability: number): number {
  return betaQuantile(probability, k, of - k + 1);
}

/** @throws {RangeError} when the confidence level is not between 0 and 1 */
export function refuseLevel(level: number): void {
  if (!(level > 0 && level < 1)) throw new RangeError("a confidence level lies between 0 and 1, such as 0.95");
}
