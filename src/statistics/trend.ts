/** A share at one point of time. */
export interface TrendPoint {
  /** Where it stands on the line: 0, 1, 2, ... */
  readonly score: number;
  readonly count: number;
  readonly of: number;
}

/**
 * Slope of the straight line through shares, each weighing as many as it is made of, per unit of score: what the trend test
 * of Cochran (1954, Biometrics 10:417-451) and Armitage (1955, Biometrics 11:375-386) asks about. Null where all stand on
 * one score.
 */
export function trendSlope(points: readonly TrendPoint[]): number | null {
  return commonSlope([points]);
}

/**
 * The same within strata: one slope for all, each stratum with a level of its own, so that a change in how many come from
 * which stratum is no trend.
 *
 * Source: Mantel (1963), J Am Stat Assoc 58:690-700 (the extension to several scores), as a slope.
 *
 * @throws {RangeError} when a count is negative or more than there are
 */
export function commonSlope(strata: readonly (readonly TrendPoint[])[]): number | null {
  const sums = strata.map(sumsOf);
  const spread = sums.reduce((total, each) => total + each.spread, 0);
  return spread > 0 ? sums.reduce((total, each) => total + each.product, 0) / spread : null;
}

/** Sums of squares and products about the stratum's own means. */
function sumsOf(points: readonly TrendPoint[]): { spread: number; product: number } {
  const of = sum(points, (point) => point.of);
  if (points.some((point) => !(point.count >= 0 && point.count <= point.of))) {
    throw new RangeError("a trend needs counts that are not negative, and not more than there are");
  }
  if (of === 0) return { spread: 0, product: 0 };
  const meanScore = sum(points, (point) => point.of * point.score) / of;
  return {
    spread: sum(points, (point) => point.of * (point.score - meanScore) ** 2),
    product: sum(points, (point) => point.count * (point.score - meanScore)),
  };
}

function sum(points: readonly TrendPoint[], of: (point: TrendPoint) => number): number {
  return points.reduce((total, point) => total + of(point), 0);
}
