import fc from "fast-check";
import { funnelLimit, observedExpected, poissonLimits, smallestCountAt } from "../../src/statistics/poisson";
import { garwood1936 } from "../published/garwood-1936";
import { selvin2004 } from "../published/selvin-2004";

describe("published", () => {
  test("Garwood (1936), as printed to 3 figures (memory)", () => {
    const { count, lower, upper } = garwood1936.printed;
    count.forEach((each, index) => {
      const limits = poissonLimits(each, 0.95);
      expect(Math.abs(limits.lower - lower[index]!)).toBeLessThan(0.0051 * Math.max(1, lower[index]!));
      expect(Math.abs(limits.upper - upper[index]!)).toBeLessThan(0.0051 * Math.max(1, upper[index]!));
    });
  });

  test("R's chi-squared form, 0 to 30", () => {
    const { count, lower, upper } = garwood1936.exact;
    count.forEach((each, index) => {
      const limits = poissonLimits(each, 0.95);
      expect(limits.lower).toBeCloseTo(lower[index]!, 9);
      expect(limits.upper).toBeCloseTo(upper[index]!, 9);
    });
  });

  test("Selvin (2004): 71,058 deaths over 85,556.9 expected", () => {
    const { ratio, lower, upper, p } = observedExpected(selvin2004.observed, selvin2004.expected, 0.95);
    expect(ratio).toBeCloseTo(selvin2004.ratio, 12);
    expect(lower).toBeCloseTo(selvin2004.lower, 9);
    expect(upper).toBeCloseTo(selvin2004.upper, 9);
    expect(p).toBeLessThan(1e-100);
  });

  /** 2 * min(ppois(O, E), ppois(O - 1, E, lower.tail = FALSE)), R 4.2.2 */
  test.each([
    [2, 9.5, 2 * 0.00416363303750334],
    [15, 9.5, 2 * 0.0599919886096757],
    [58, 55.4, 2 * 0.3810655669688068],
  ])("p of %i observed and %d expected", (observed, expected, p) => {
    expect(observedExpected(observed, expected, 0.95).p).toBeCloseTo(p, 12);
  });

  /** qpois(q, c(0.5, 3, 12.7, 60, 250)), R 4.2.2 */
  test.each([
    [0.001, [0, 0, 3, 38, 203]],
    [0.025, [0, 0, 6, 45, 219]],
    [0.975, [2, 7, 20, 76, 281]],
    [0.999, [4, 10, 25, 85, 300]],
  ])("funnel limits at %d", (q, counts) => {
    [0.5, 3, 12.7, 60, 250].forEach((expected, index) => {
      expect(smallestCountAt(q, expected)).toBe(counts[index]);
      expect(funnelLimit(expected, q)).toBe(counts[index]! / expected);
    });
  });
});

describe("by hand", () => {
  test("none observed at 90%: e^-upper = 0.05", () => {
    expect(poissonLimits(0, 0.9)).toEqual({ lower: 0, upper: expect.closeTo(-Math.log(0.05), 10) });
  });

  test("none observed, ln 2 expected: the lower tail is 1/2, so p is 1", () => {
    expect(observedExpected(0, Math.LN2, 0.95).p).toBeCloseTo(1, 12);
  });

  test("none observed, 3 expected: p = 2 e^-3", () => {
    expect(observedExpected(0, 3, 0.95)).toMatchObject({ ratio: 0, lower: 0, p: expect.closeTo(2 * Math.exp(-3), 12) });
  });
});

describe("property", () => {
  const observed = fc.integer({ min: 0, max: 500 });
  const expected = fc.double({ min: 0.01, max: 500, noNaN: true });

  test("p is under 5% exactly where the 95% limits leave out 1", () => {
    fc.assert(
      fc.property(observed, expected, (count, mean) => {
        const { lower, upper, p } = observedExpected(count, mean, 0.95);
        if (Math.abs(p! - 0.05) < 1e-9) return;
        expect(p! < 0.05).toBe(lower! > 1 || upper! < 1);
      }),
      { seed: 14, numRuns: 500 },
    );
  });

  test("twice the expected number halves ratio and limits", () => {
    fc.assert(
      fc.property(observed, expected, (count, mean) => {
        const once = observedExpected(count, mean, 0.9);
        const twice = observedExpected(count, 2 * mean, 0.9);
        expect(twice.ratio).toBeCloseTo(once.ratio! / 2, 9);
        expect(twice.upper! / once.upper!).toBeCloseTo(0.5, 9);
      }),
      { seed: 15 },
    );
  });
});

describe("refusal", () => {
  test.each([
    [-1, 2, 0.95],
    [1.5, 2, 0.95],
    [1, -2, 0.95],
    [1, NaN, 0.95],
    [1, Infinity, 0.95],
    [1, 2, 1],
  ])("%d observed, %d expected, level %d", (observed, expected, level) => {
    expect(() => observedExpected(observed, expected, level)).toThrow(RangeError);
  });

  test("funnel limits at 0 and 1", () => {
    expect(() => funnelLimit(3, 0)).toThrow(RangeError);
    expect(() => funnelLimit(3, 1)).toThrow(RangeError);
  });

  test("none expected is null with a reason", () => {
    expect(observedExpected(3, 0, 0.95)).toEqual({
      ratio: null,
      lower: null,
      upper: null,
      p: null,
      reason: "none was expected",
    });
    expect(funnelLimit(0, 0.975)).toBeNull();
  });
});
