import fc from "fast-check";
import { expectedCount, standardisedShare, stratumRates } from "../../src/statistics/standardise";
import { charig1986 } from "../published/charig-1986";
import { fleiss1981 } from "../published/fleiss-1981-standardised";
import { selvin2004 } from "../published/selvin-2004";

describe("published", () => {
  test("indirect: Selvin (2004), 85,556.9 deaths expected", () => {
    const rates = stratumRates(selvin2004.standardDeaths, selvin2004.standardPopulation);
    expect(expectedCount(selvin2004.population, rates)).toBeCloseTo(selvin2004.expected, 7);
  });

  test("direct: Fleiss (1981), five birth orders", () => {
    const { births, counts, all, adjusted } = fleiss1981;
    births.forEach((of, order) => {
      const strata = of.map((each, age) => ({ count: counts[order]![age]!, of: each }));
      expect(standardisedShare(strata, all)).toBeCloseTo(adjusted[order]!, 15);
    });
    expect(adjusted[0] * 100_000).toBeCloseTo(fleiss1981.printedFirst, 1);
  });

  test("direct: Charig et al. (1986), better in either stratum and worse pooled: the standardised shares say better", () => {
    const { first, second, pooled } = charig1986;
    const weights = first.map(({ of }, stratum) => of + second[stratum]!.of);
    expect(pooled[0]).toBeLessThan(pooled[1]);
    expect(standardisedShare(first, weights)!).toBeGreaterThan(standardisedShare(second, weights)!);
  });
});

describe("by hand", () => {
  test("1 of 2 and 1 of 4, weighted 3 to 1: 3/8 + 1/16", () => {
    const strata = [
      { count: 1, of: 2 },
      { count: 1, of: 4 },
    ];
    expect(standardisedShare(strata, [3, 1])).toBeCloseTo(7 / 16, 15);
  });

  test("a stratum without time has no rate", () => {
    expect([...stratumRates([2, 0], [4, 0])]).toEqual([0.5, 0]);
  });
});

describe("property", () => {
  const stratum = fc.record({ of: fc.integer({ min: 1, max: 50 }), missed: fc.nat(50) });

  test("weighted as the group is made up, the standardised share is the pooled one", () => {
    fc.assert(
      fc.property(fc.array(stratum, { minLength: 1, maxLength: 6 }), (drawn) => {
        const strata = drawn.map(({ of, missed }) => ({ of, count: Math.max(0, of - missed) }));
        const [count, of] = [sum(strata.map((each) => each.count)), sum(strata.map((each) => each.of))];
        expect(
          standardisedShare(
            strata,
            strata.map((each) => each.of),
          ),
        ).toBeCloseTo(count / of, 12);
      }),
    );
  });

  test("the standard's own rates expect in its own time what it counted", () => {
    fc.assert(
      fc.property(fc.array(stratum, { maxLength: 6 }), (drawn) => {
        const counts = drawn.map(({ missed }) => missed);
        const time = drawn.map(({ of }) => of);
        expect(expectedCount(time, stratumRates(counts, time))).toBeCloseTo(sum(counts), 9);
      }),
    );
  });
});

describe("refusal", () => {
  test("lists of different length, negative weights", () => {
    expect(() => expectedCount([1], [])).toThrow(RangeError);
    expect(() => stratumRates([1], [])).toThrow(RangeError);
    expect(() => standardisedShare([], [1])).toThrow(RangeError);
    expect(() => standardisedShare([{ count: 0, of: 1 }], [-1])).toThrow(RangeError);
  });

  test("a stratum of nobody is null where it has weight, and left out where it has none", () => {
    const strata = [
      { count: 0, of: 0 },
      { count: 1, of: 2 },
    ];
    expect(standardisedShare(strata, [1, 1])).toBeNull();
    expect(standardisedShare(strata, [0, 1])).toBe(0.5);
    expect(standardisedShare(strata, [0, 0])).toBeNull();
  });
});

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
