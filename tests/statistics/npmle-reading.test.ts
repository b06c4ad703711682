import fc from "fast-check";
import { npmle } from "../../src/statistics/npmle";
import { percentile, shareBy } from "../../src/statistics/npmle-reading";

const estimateOf = (after: number[], by: number[]) => npmle(Float64Array.from(after), Float64Array.from(by));

describe("by hand", () => {
  test("one innermost interval (100, 200]: the median is its middle", () => {
    const estimate = estimateOf([100], [200]);
    expect(percentile(estimate, 0.5)).toBeCloseTo(150, 4);
    expect(shareBy(estimate, 125)).toBe(1 / 4);
    expect(shareBy(estimate, 100)).toBe(0);
    expect(shareBy(estimate, 99)).toBe(0);
  });

  test("nobody is still without it: after the last interval the share is 1", () => {
    expect(shareBy(estimateOf([100], [200]), 201)).toBe(1);
  });

  test("half never seen: the share is 1/2 by day 200, unknown after, and 3/4 is not reached", () => {
    const estimate = estimateOf([100, 300], [200, Infinity]);
    expect(shareBy(estimate, 200)).toBeCloseTo(1 / 2, 9);
    expect(shareBy(estimate, 200.5)).toBeNull();
    expect(percentile(estimate, 0.5)).toBeCloseTo(200, 4);
    expect(percentile(estimate, 0.75)).toBeNull();
  });

  test("thirds: the share 1/3 is reached on the first exact day, whatever the rounding", () => {
    const estimate = estimateOf([10, 20, 30], [10, 20, 30]);
    expect([1 / 3, 0.34, 2 / 3, 1].map((share) => percentile(estimate, share))).toEqual([10, 20, 20, 30]);
    expect(shareBy(estimate, 19.9)).toBeCloseTo(1 / 3, 9);
    expect(shareBy(estimate, 20)).toBeCloseTo(2 / 3, 9);
  });

  test("nobody seen with it: nothing can be read, at no age", () => {
    const estimate = estimateOf([100], [Infinity]);
    expect(percentile(estimate, 0.1)).toBeNull();
    expect(shareBy(estimate, 50)).toBeNull();
  });
});

describe("property", () => {
  const rows = fc.array(
    fc.tuple(fc.integer({ min: 0, max: 60 }), fc.oneof(fc.integer({ min: 0, max: 30 }), fc.constant(Infinity))),
    { minLength: 1, maxLength: 30 },
  );

  test("the share met never falls with age, and the age never falls with the share", () => {
    fc.assert(
      fc.property(rows, (pairs) => {
        const estimate = estimateOf(
          pairs.map(([after]) => after),
          pairs.map(([after, length]) => after + length),
        );
        const shares = Array.from({ length: 110 }, (_, age) => shareBy(estimate, age) ?? 2);
        const ages = Array.from({ length: 50 }, (_, step) => percentile(estimate, (step + 1) / 50) ?? Infinity);
        shares.slice(1).forEach((share, index) => expect(share).toBeGreaterThanOrEqual(shares[index]! - 1e-12));
        ages.slice(1).forEach((age, index) => expect(age).toBeGreaterThanOrEqual(ages[index]!));
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  test("the share at a percentile is that percentile", () => {
    fc.assert(
      fc.property(rows, fc.double({ min: 0.02, max: 0.98, noNaN: true }), (pairs, share) => {
        const estimate = estimateOf(
          pairs.map(([after]) => after),
          pairs.map(([after, length]) => after + length),
        );
        const age = percentile(estimate, share);
        if (age === null) return;
        expect(shareBy(estimate, age)).toBeGreaterThanOrEqual(share - 1.1e-7);
        expect(shareBy(estimate, age - 1e-6) ?? 1).toBeLessThanOrEqual(share + 1e-3);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});

describe("refusal", () => {
  test.each([0, -0.1, 1.1, NaN])("a share of %d", (share) => {
    expect(() => percentile(estimateOf([1], [2]), share)).toThrow(RangeError);
  });

  test("an age that is not a number", () => {
    expect(() => shareBy(estimateOf([1], [2]), NaN)).toThrow(RangeError);
  });
});
