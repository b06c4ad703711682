import { quantileSorted } from "simple-statistics";

/**
 * Quantile of numbers sorted upwards, interpolated between the two nearest (type 7), where Infinity is a value that is
 * out of reach: anything between a number and Infinity is Infinity.
 *
 * Source: Hyndman & Fan (1996), Am Stat 50:361-365, definition 7.
 */
export function quantileOfSorted(sorted: Float64Array, share: number): number {
  const position = (sorted.length - 1) * share;
  if (sorted[Math.ceil(position)] === Infinity) return Infinity;
  return quantileSorted(sorted as unknown as number[], share);
}
