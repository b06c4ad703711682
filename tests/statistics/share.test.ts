import fc from "fast-check";
import { shareDifference, shareInterval, type ShareMethod } from "../../src/statistics/share";
import { newcombe1998a } from "../published/newcombe-1998a";
import { newcombe1998b } from "../published/newcombe-1998b";
import { shareGrid } from "../published/wilson-clopper-pearson";

const METHODS: readonly ShareMethod[] = ["wilson", "exact", "mid-p"];

describe("published", () => {
  test.each(newcombe1998a)("Newcombe (1998), table I: $count of $of", ({ count, of, wilson, exact, midP }) => {
    const limits = (method: ShareMethod) => {
      const { lower, upper } = shareInterval(count, of, 0.95, method);
      return [lower, upper];
    };
    const printed = (pair: readonly number[]) => pair.map((limit) => expect.closeTo(limit, 4));
    expect(limits("wilson")).toEqual(printed(wilson));
    expect(limits("exact")).toEqual(printed(exact));
    expect(limits("mid-p")).toEqual(printed(midP));
  });

  test.each(newcombe1998b)("Newcombe (1998), table II, $name: $counts", ({ counts, difference, printed, computed }) => {
    const found = shareDifference(counts[0]!, counts[1]!, counts[2]!, counts[3]!, 0.95);
    expect(found.difference).toBeCloseTo(difference, 12);
    expect([found.lower, found.upper]).toEqual(printed.map((limit) => expect.closeTo(limit, 4)));
    expect([found.lower, found.upper]).toEqual(computed.map((limit) => expect.closeTo(limit, 12)));
  });

  test.each(shareGrid.levels)("R's prop.test and binom.test at level $level", (expected) => {
    shareGrid.count.forEach((count, index) => {
      const of = shareGrid.of[index]!;
      const wilson = shareInterval(count, of, expected.level, "wilson");
      const exact = shareInterval(count, of, expected.level, "exact");
      expect(wilson.lower).toBeCloseTo(expected.wilsonLower[index]!, 12);
      expect(wilson.upper).toBeCloseTo(expected.wilsonUpper[index]!, 12);
      expect(exact.lower).toBeCloseTo(expected.exactLower[index]!, 9);
      expect(exact.upper).toBeCloseTo(expected.exactUpper[index]!, 9);
    });
  });
});

describe("by hand", () => {
  test("exact limits of 0 of 1 at 90%: (1 - p) = 0.05 gives 0.95", () => {
    expect(shareInterval(0, 1, 0.9, "exact")).toMatchObject({ share: 0, lower: 0, upper: expect.closeTo(0.95, 12) });
  });

  test("mid-p of 0 of 2 at 92%: half of (1 - p)^2 = 0.04 gives 1 - sqrt(0.08)", () => {
    expect(shareInterval(0, 2, 0.92, "mid-p").upper).toBeCloseTo(1 - Math.sqrt(0.08), 12);
  });

  test("the same share twice differs by 0, by as much up as down", () => {
    const { difference, lower, upper } = shareDifference(3, 10, 3, 10, 0.95);
    expect(difference).toBe(0);
    expect(lower).toBeCloseTo(-upper!, 12);
  });
});

describe("property", () => {
  const counts = fc
    .integer({ min: 1, max: 400 })
    .chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)));
  const levels = fc.double({ min: 0.5, max: 0.999, noNaN: true });

  test.each(METHODS)("%s: the share lies between its limits, and the rest mirrors it", (method) => {
    fc.assert(
      fc.property(counts, levels, ([count, of], level) => {
        const { share, lower, upper } = shareInterval(count, of, level, method);
        const rest = shareInterval(of - count, of, level, method);
        expect(lower).toBeGreaterThanOrEqual(0);
        expect(upper).toBeLessThanOrEqual(1);
        expect(lower).toBeLessThanOrEqual(share! + 1e-12);
        expect(upper).toBeGreaterThanOrEqual(share! - 1e-12);
        expect(rest.lower).toBeCloseTo(1 - upper!, 12);
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  test("mid-p limits lie within exact ones, and a higher level is wider", () => {
    fc.assert(
      fc.property(counts, ([count, of]) => {
        const exact = shareInterval(count, of, 0.95, "exact");
        const midP = shareInterval(count, of, 0.95, "mid-p");
        expect(midP.lower).toBeGreaterThanOrEqual(exact.lower! - 1e-12);
        expect(midP.upper).toBeLessThanOrEqual(exact.upper! + 1e-12);
        for (const method of METHODS) {
          const wider = shareInterval(count, of, 0.99, method);
          expect(wider.lower).toBeLessThanOrEqual(shareInterval(count, of, 0.95, method).lower! + 1e-12);
        }
      }),
      { seed: 12, numRuns: 200 },
    );
  });

  test("the difference turns its sign with the order of the groups", () => {
    fc.assert(
      fc.property(counts, counts, (first, second) => {
        const there = shareDifference(...first, ...second, 0.95);
        const back = shareDifference(...second, ...first, 0.95);
        expect(back.difference).toBeCloseTo(-there.difference!, 12);
        expect(back.lower).toBeCloseTo(-there.upper!, 12);
      }),
      { seed: 13, numRuns: 200 },
    );
  });
});

describe("refusal", () => {
  test.each([
    [-1, 10, 0.95],
    [11, 10, 0.95],
    [2.5, 10, 0.95],
    [2, 10.5, 0.95],
    [NaN, 10, 0.95],
    [2, Infinity, 0.95],
    [2, 10, 0],
    [2, 10, 1],
    [2, 10, 95],
  ])("%d of %d at level %d", (count, of, level) => {
    expect(() => shareInterval(count, of, level, "wilson")).toThrow(RangeError);
    expect(() => shareDifference(1, 2, count, of, level)).toThrow(RangeError);
  });

  test("a method that is not known", () => {
    expect(() => shareInterval(1, 2, 0.95, "wald" as ShareMethod)).toThrow(RangeError);
  });

  test("nobody to take a share of is null with a reason", () => {
    expect(shareInterval(0, 0, 0.95, "wilson")).toEqual({
      share: null,
      lower: null,
      upper: null,
      reason: "there is nobody to take a share of",
    });
    expect(shareDifference(0, 0, 1, 2, 0.95)).toMatchObject({
      difference: null,
      reason: expect.stringContaining("nobody"),
    });
  });
});
