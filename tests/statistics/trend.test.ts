import fc from "fast-check";
import { commonSlope, type TrendPoint, trendSlope } from "../../src/statistics/trend";
import { bickel1975 } from "../published/bickel-1975";
import { charig1986 } from "../published/charig-1986";
import { fleiss1981Trend } from "../published/fleiss-1981-trend";

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe("published", () => {
  const { counts, of, chiSquared } = fleiss1981Trend;
  const points = counts.map((count, score) => ({ score: score + 1, count, of: of[score]! }));

  test("Fleiss (1981): slope squared by the spread of the scores, over p (1 - p), is the chi-squared of the trend", () => {
    const [all, pooled] = [sum(of), sum(counts) / sum(of)];
    const mean = sum(points.map((point) => point.of * point.score)) / all;
    const spread = sum(points.map((point) => point.of * (point.score - mean) ** 2));
    expect((trendSlope(points)! ** 2 * spread) / (pooled * (1 - pooled))).toBeCloseTo(chiSquared, 4);
    expect(trendSlope(points)).toBeLessThan(0);
  });

  test("Charig et al. (1986): pooled it rises, within either stratum it falls", () => {
    const strata = charig1986.first.map((first, stratum) => [
      { score: 0, ...first },
      { score: 1, ...charig1986.second[stratum]! },
    ]);
    const pooled = [0, 1].map((score) => ({
      score,
      count: sum(strata.map((points) => points[score]!.count)),
      of: sum(strata.map((points) => points[score]!.of)),
    }));
    expect(trendSlope(pooled)).toBeCloseTo(charig1986.pooled[1] - charig1986.pooled[0], 12);
    expect(commonSlope(strata)).toBeLessThan(0);
  });

  /** The slope within strata times its spread is what was seen less what was expected, as Mantel and Haenszel add it up. */
  test("Bickel et al. (1975): pooled it rises, within departments it falls a little, with the Mantel-Haenszel chi-squared", () => {
    const strata = bickel1975.departments.map(({ women, men }) =>
      [women, men].map(([yes, no], score) => ({ score, count: yes, of: yes + no })),
    );
    expect(trendSlope(strata.flat())).toBeGreaterThan(0.1);
    const slope = commonSlope(strata) as number;
    expect(Math.sign(slope)).toBe(Math.sign(Math.log(bickel1975.commonOddsRatio)));
    const spreads = strata.map(([women, men]) => (women!.of * men!.of) / (women!.of + men!.of));
    const variances = strata.map((points, stratum) => {
      const all = sum(points.map((point) => point.of));
      const yes = sum(points.map((point) => point.count));
      return (spreads[stratum]! * yes * (all - yes)) / (all * (all - 1));
    });
    expect((slope * sum(spreads)) ** 2 / sum(variances)).toBeCloseTo(bickel1975.chiSquared, 10);
  });
});

describe("by hand", () => {
  test("1 of 4, then 3 of 4: half a unit", () => {
    const points = [
      { score: 0, count: 1, of: 4 },
      { score: 1, count: 3, of: 4 },
    ];
    expect(trendSlope(points)).toBe(0.5);
  });

  test("all at one score, or nobody: no slope", () => {
    expect(trendSlope([{ score: 2, count: 1, of: 3 }])).toBeNull();
    expect(trendSlope([])).toBeNull();
  });
});

describe("property", () => {
  const point = fc
    .record({ score: fc.nat(7), of: fc.integer({ min: 1, max: 30 }), missed: fc.nat(30) })
    .map(({ score, of, missed }): TrendPoint => ({ score, of, count: Math.max(0, of - missed) }));

  test("order, later scores and every child twice change nothing; strata that are alike have the slope of one", () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 8 }), (points) => {
        const slope = trendSlope(points);
        const same = (other: number | null) => expect(other).toEqual(slope === null ? null : expect.closeTo(slope, 9));
        same(trendSlope([...points].reverse()));
        same(trendSlope(points.map((each) => ({ ...each, score: each.score + 7 }))));
        same(trendSlope(points.map(({ score, count, of }) => ({ score, count: 2 * count, of: 2 * of }))));
        same(commonSlope([points, points]));
      }),
    );
  });
});

test.each([
  [-1, 2],
  [3, 2],
])("%d of %d is refused", (count, of) => {
  expect(() => trendSlope([{ score: 0, count, of }])).toThrow(RangeError);
});
