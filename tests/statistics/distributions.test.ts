import fc from "fast-check";
import {
  binomialAtLeast,
  binomialAtMost,
  binomialShareWhereAtLeast,
  chiSquaredTail,
  normalHalfWidth,
  normalQuantile,
  normalShareBelow,
  poissonAtLeast,
  poissonAtMost,
  poissonExpectedWhereAtLeast,
} from "../../src/statistics/distributions";

const relative = (found: number, expected: number) => Math.abs(found / expected - 1);

/** All numbers: R 4.2.2, options(digits = 15). */
describe("published", () => {
  test("qnorm(c(0.9, 0.975, 0.995)) and pnorm", () => {
    expect(normalQuantile(0.9)).toBeCloseTo(1.2815515655446, 13);
    expect(normalHalfWidth(0.95)).toBeCloseTo(1.95996398454005, 13);
    expect(normalHalfWidth(0.99)).toBeCloseTo(2.5758293035489, 13);
    expect(normalShareBelow(1.95996398454005)).toBeCloseTo(0.975, 13);
  });

  test.each([
    [0.5, 1, 0.479500122186953],
    [3.84, 1, 0.0500435212487052],
    [16.8, 4, 0.00211375284728117],
    [120, 3, 7.71679035563416e-26],
    [80, 1, 3.7440973842029e-19],
  ])("pchisq(%d, %i, lower.tail = FALSE)", (value, degrees, tail) => {
    expect(relative(chiSquaredTail(value, degrees), tail)).toBeLessThan(1e-12);
  });

  test("pbinom(3, 10, 0.25), its upper tail from 7 on, and qbeta(0.025, 7, 4)", () => {
    expect(binomialAtMost(3, 10, 0.25)).toBeCloseTo(0.775875091552734, 12);
    expect(binomialAtLeast(7, 10, 0.25)).toBeCloseTo(0.00350570678710938, 12);
    expect(binomialShareWhereAtLeast(7, 10, 0.025)).toBeCloseTo(0.347547149940003, 12);
  });

  test("ppois(3, 60) and ppois(59, 3, lower.tail = FALSE)", () => {
    expect(relative(poissonAtMost(3, 60), 3.31530253986453e-22)).toBeLessThan(1e-12);
    expect(relative(poissonAtLeast(60, 3), 2.66747373748306e-55)).toBeLessThan(1e-12);
  });

  test.each([
    [1000, 1062.92115122489],
    [3000, 3108.29563949068],
    [10000, 10196.9418249999],
    [71059, 71582.4120295229],
  ])("qgamma(0.975, %i), where stdlib's tail is too short", (k, expected) => {
    expect(relative(poissonExpectedWhereAtLeast(k, 0.975), expected)).toBeLessThan(1e-13);
    expect(poissonAtLeast(k, expected)).toBeCloseTo(0.975, 9);
    expect(poissonAtMost(k - 1, expected)).toBeCloseTo(0.025, 9);
  });
});

describe("by hand", () => {
  test("chi-squared of 2 degrees: e^(-x / 2)", () => {
    expect(chiSquaredTail(3, 2)).toBeCloseTo(Math.exp(-1.5), 14);
    expect(chiSquaredTail(0, 2)).toBe(1);
  });

  test("one expected: none e^-1, at least two 1 - 2 e^-1", () => {
    expect(poissonAtMost(0, 1)).toBeCloseTo(Math.exp(-1), 14);
    expect(poissonAtLeast(2, 1)).toBeCloseTo(1 - 2 * Math.exp(-1), 14);
    expect([poissonAtMost(-1, 1), poissonAtLeast(0, 1)]).toEqual([0, 1]);
  });

  test("two trials of 1/2: at least one 3/4, more than two never", () => {
    expect(binomialAtLeast(1, 2, 0.5)).toBeCloseTo(0.75, 14);
    expect([binomialAtLeast(0, 2, 0.5), binomialAtLeast(3, 2, 0.5)]).toEqual([1, 0]);
  });
});

describe("property", () => {
  test("tails of a Poisson count complete each other, below and above the point where the method changes", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3000 }), fc.double({ min: 0.5, max: 3000, noNaN: true }), (k, mean) => {
        expect(poissonAtMost(k - 1, mean) + poissonAtLeast(k, mean)).toBeCloseTo(1, 11);
      }),
      { seed: 19, numRuns: 500 },
    );
  });

  test("the Poisson probability of one count is what the tails differ by", () => {
    fc.assert(
      fc.property(fc.integer({ min: 950, max: 1100 }), fc.double({ min: 950, max: 1100, noNaN: true }), (k, mean) => {
        let logPoint = -mean;
        for (let each = 1; each <= k; each += 1) logPoint += Math.log(mean / each);
        expect(poissonAtMost(k, mean) - poissonAtMost(k - 1, mean)).toBeCloseTo(Math.exp(logPoint), 11);
      }),
      { seed: 20, numRuns: 200 },
    );
  });
});

describe("refusal", () => {
  test.each([0, 1, 95, NaN])("a level of %d", (level) => {
    expect(() => normalHalfWidth(level)).toThrow(RangeError);
  });
});
