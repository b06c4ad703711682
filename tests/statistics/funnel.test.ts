import { flaggedByLuck, funnelCounts, smallestDetectableRatio } from "../../src/statistics/funnel";
import { poissonAtLeast } from "../../src/statistics/distributions";
import { nistCChart } from "../published/nist-c-chart";

describe("published", () => {
  test("NIST: of 25 wafers with 16 defects expected, the 24th alone is outside, by exact limits as by three sigma", () => {
    const { lowest, highest } = funnelCounts(nistCChart.centre, 0.998);
    const outside = nistCChart.counts.flatMap((count, at) => (count < lowest || count > highest ? [at + 1] : []));
    expect(nistCChart.counts.reduce<number>((sum, count) => sum + count, 0)).toBe(nistCChart.centre * 25);
    expect(outside).toEqual(nistCChart.beyond);
  });

  /** lo <- qpois(t, E), hi <- qpois(1 - t, E), ppois(lo - 1, E) + ppois(hi, E, lower = FALSE), t = 0.025 and 0.001, R 4.2.2 */
  test.each([
    [0.5, 0.95, 0, 2, 0.0143876779669707],
    [0.5, 0.998, 0, 4, 0.000172115629955841],
    [13.5, 0.95, 7, 21, 0.0396994481841649],
    [13.5, 0.998, 4, 26, 0.00149006691839409],
    [60, 0.95, 45, 76, 0.0385337077457542],
    [60, 0.998, 38, 85, 0.00189697114658023],
  ])("%d expected, level %d", (expected, level, lowest, highest, byLuck) => {
    expect(funnelCounts(expected, level)).toEqual({ lowest, highest });
    expect(flaggedByLuck(expected, level)).toBeCloseTo(byLuck, 12);
  });

  /** qgamma(0.8, qpois(0.975, E) + 1) / E, R 4.2.2 */
  test.each([
    [0.5, 8.55805972025067],
    [3, 3.41084654896464],
    [13.5, 1.91255266940835],
    [60, 1.4045225841326],
  ])("%d expected: the smallest ratio found in four of five", (expected, ratio) => {
    expect(smallestDetectableRatio(expected, 0.05, 0.8)).toBeCloseTo(ratio, 10);
  });
});

test("by definition: at that ratio the critical count is reached with the power asked for", () => {
  const ratio = smallestDetectableRatio(9, 0.05, 0.8);
  const critical = [...Array(60).keys()].find((count) => poissonAtLeast(count, 9) <= 0.025)!;
  expect(poissonAtLeast(critical, ratio * 9)).toBeCloseTo(0.8, 10);
});

test.each([0, -1, NaN, Infinity])("%d expected is refused", (expected) => {
  expect(() => funnelCounts(expected, 0.95)).toThrow(RangeError);
  expect(() => smallestDetectableRatio(expected, 0.05, 0.8)).toThrow(RangeError);
});
