import fc from "fast-check";
import { bootstrapAgeWhenMet } from "../../src/statistics/bootstrap";
import { npmle } from "../../src/statistics/npmle";
import { percentile, shareBy } from "../../src/statistics/npmle-reading";
import { randomFrom } from "../../src/statistics/random";
import { invented200 } from "../published/npsurv-invented";
import { oneRowAChild } from "./columns";

const options = { shares: [0.5], ages: [12], replicates: 1000, level: 0.95, seed: 20240229 };
const { after, by } = oneRowAChild(invented200.after, invented200.by, invented200.count);

const R_MEDIAN = { estimate: 12.781832433800394, lower: 12.2330945212982, upper: 13.2680225371481 };
const R_SHARE = { estimate: 0.382486255104431, lower: 0.276294232390087, upper: 0.474383571685799 };

describe("published", () => {
  test("the estimate itself is that of R's npsurv", () => {
    const estimate = npmle(after, by);
    expect(percentile(estimate, 0.5)).toBeCloseTo(R_MEDIAN.estimate, 5);
    expect(shareBy(estimate, 12)).toBeCloseTo(R_SHARE.estimate, 6);
  });

  /**
   * 200 invented children, 4,000 replicates, type 7 quantiles of the median (mass spread evenly) and of the share by 12 months:
   * npsurv::npsurv on rows drawn with sample(n, n, TRUE) after set.seed(1), R 4.2.2, npsurv 0.5.0.
   * Another stream of chance, so that the limits agree only about as far as 1,000 replicates can tell.
   */
  test("limits are those of R's npsurv under another stream", () => {
    const limits = bootstrapAgeWhenMet(after, by, options);
    expect(Math.abs(limits.ageLimits[0]!.lower! - R_MEDIAN.lower)).toBeLessThan(0.12);
    expect(Math.abs(limits.ageLimits[0]!.upper! - R_MEDIAN.upper)).toBeLessThan(0.12);
    expect(Math.abs(limits.shareLimits[0]!.lower! - R_SHARE.lower)).toBeLessThan(0.02);
    expect(Math.abs(limits.shareLimits[0]!.upper! - R_SHARE.upper)).toBeLessThan(0.02);
  });
});

describe("by hand", () => {
  test("children who are all alike leave nothing to chance", () => {
    const limits = bootstrapAgeWhenMet(new Float64Array(9).fill(100), new Float64Array(9).fill(200), {
      ...options,
      ages: [150],
    });
    expect(limits.ageLimits[0]!.lower).toBeCloseTo(150, 4);
    expect(limits.ageLimits[0]!.upper).toBeCloseTo(150, 4);
    expect(limits.shareLimits).toEqual([{ lower: 0.5, upper: 0.5 }]);
  });

  test("a replicate of nobody who met it counts as infinite: one of two children, so a quarter of the replicates", () => {
    const limits = (level: number) =>
      bootstrapAgeWhenMet(Float64Array.of(10, 50), Float64Array.of(10, Infinity), { ...options, ages: [], level });
    // drawn twice (1/4) or once (1/2) the exact child gives 10; never (1/4) gives none
    expect(limits(0.4).ageLimits[0]).toEqual({ lower: 10, upper: 10 });
    expect(limits(0.6).ageLimits[0]).toEqual({ lower: 10, upper: null });
  });

  test("an exact share: of 100 children 30 met it by day 10, and the limits are those of a binomial count", () => {
    const half = bootstrapAgeWhenMet(
      Float64Array.from({ length: 100 }, (_, child) => (child < 30 ? 10 : 20)),
      Float64Array.from({ length: 100 }, (_, child) => (child < 30 ? 10 : 20)),
      { ...options, shares: [], ages: [15], replicates: 4000 },
    ).shareLimits[0]!;
    // qbinom(c(0.025, 0.975), 100, 0.3), R 4.2.2: 21 and 39
    expect(Math.abs(half.lower! - 0.21)).toBeLessThanOrEqual(0.0101);
    expect(Math.abs(half.upper! - 0.39)).toBeLessThanOrEqual(0.0101);
  });
});

describe("property", () => {
  test("the same seed gives the same limits, and a higher level wider ones", () => {
    expect(bootstrapAgeWhenMet(after, by, options)).toEqual(bootstrapAgeWhenMet(after, by, options));
    const narrow = bootstrapAgeWhenMet(after, by, { ...options, level: 0.5 });
    const wide = bootstrapAgeWhenMet(after, by, options);
    expect(wide.ageLimits[0]!.lower!).toBeLessThan(narrow.ageLimits[0]!.lower!);
    expect(wide.ageLimits[0]!.upper!).toBeGreaterThan(narrow.ageLimits[0]!.upper!);
  });

  test("lower is never above upper, and shares stay between 0 and 1", () => {
    const row = fc.tuple(
      fc.integer({ min: 0, max: 40 }),
      fc.oneof(fc.integer({ min: 0, max: 20 }), fc.constant(Infinity)),
    );
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 25 }), fc.integer({ min: 0, max: 99 }), (rows, seed) => {
        const starts = Float64Array.from(rows, ([start]) => start);
        const ends = Float64Array.from(rows, ([start, length]) => start + length);
        const limits = bootstrapAgeWhenMet(starts, ends, {
          shares: [0.2, 0.5],
          ages: [10, 30],
          replicates: 50,
          level: 0.9,
          seed,
        });
        for (const { lower, upper } of [...limits.ageLimits, ...limits.shareLimits]) {
          if (upper !== null) expect(lower).not.toBeNull();
          expect(lower ?? 0).toBeLessThanOrEqual(upper ?? Infinity);
        }
        for (const { lower, upper } of limits.shareLimits) {
          expect(lower ?? 0).toBeGreaterThanOrEqual(0);
          expect(upper ?? 1).toBeLessThanOrEqual(1);
        }
      }),
      { seed: 7, numRuns: 100 },
    );
  });

  test("the estimate lies between its limits", () => {
    const limits = bootstrapAgeWhenMet(after, by, options);
    const estimate = npmle(after, by);
    expect(percentile(estimate, 0.5)!).toBeGreaterThan(limits.ageLimits[0]!.lower!);
    expect(percentile(estimate, 0.5)!).toBeLessThan(limits.ageLimits[0]!.upper!);
    expect(shareBy(estimate, 12)!).toBeGreaterThan(limits.shareLimits[0]!.lower!);
    expect(shareBy(estimate, 12)!).toBeLessThan(limits.shareLimits[0]!.upper!);
  });
});

describe("order of the rows", () => {
  test("changes no limit", () => {
    const interval = fc.tuple(fc.nat(30), fc.oneof(fc.nat(15), fc.constant(Infinity)));
    const shuffledPair = fc
      .array(interval, { minLength: 2, maxLength: 20 })
      .chain((rows) => fc.tuple(fc.constant(rows), fc.shuffledSubarray(rows, { minLength: rows.length })));
    const limitsOf = (rows: readonly (readonly [number, number])[]) =>
      bootstrapAgeWhenMet(
        Float64Array.from(rows, ([start]) => start),
        Float64Array.from(rows, ([start, length]) => start + length),
        { shares: [0.25, 0.5], ages: [12], replicates: 40, level: 0.9, seed: 5 },
      );
    fc.assert(
      fc.property(shuffledPair, ([rows, moved]) => expect(limitsOf(moved)).toEqual(limitsOf(rows))),
      { numRuns: 60 },
    );
  });

  test("a draw below n picks the first interval, by start and then end, whose running count passes it", () => {
    // exact days 10 (3 children), 20 (1), 30 (2): draws 0, 1, 2 give 10, draw 3 gives 20, draws 4, 5 give 30
    const days = [30, 10, 20, 10, 30, 10];
    const replicates = 20;
    const random = randomFrom(options.seed);
    const medians = Array.from({ length: replicates }, () => {
      const drawn = days.map(() => [10, 10, 10, 20, 30, 30][random.nextInt(6)]!).sort((a, b) => a - b);
      return drawn[2]!; // the first age by which 3 of the 6 drawn have met it
    }).sort((a, b) => a - b);
    const columns = Float64Array.from(days);
    const asked = { shares: [0.5], ages: [], replicates, level: 0.5, seed: options.seed };
    // type 7 of 20 values: the quartiles stand at 1 + 19/4 = 5.75 and 1 + 57/4 = 15.25
    const quantile = (at: number) => medians[at - 1]! + (at === 5 ? 0.75 : 0.25) * (medians[at]! - medians[at - 1]!);
    expect(bootstrapAgeWhenMet(columns, columns, asked).ageLimits[0]).toEqual({
      lower: quantile(5),
      upper: quantile(15),
    });
  });
});

describe("refusal", () => {
  test.each([
    ["no replicate", { replicates: 1 }],
    ["part of a replicate", { replicates: 10.5 }],
    ["a level of 0", { level: 0 }],
    ["a level of 95", { level: 95 }],
    ["a share of 50", { shares: [50] }],
    ["an age that is not a number", { ages: [NaN] }],
    ["a seed with decimals", { seed: 0.5 }],
  ])("%s", (_, wrong) => {
    expect(() => bootstrapAgeWhenMet(after, by, { ...options, ...wrong })).toThrow(RangeError);
  });

  test("no child", () => {
    expect(() => bootstrapAgeWhenMet(new Float64Array(0), new Float64Array(0), options)).toThrow(RangeError);
  });
});
