import fc from "fast-check";
import { agreement } from "../../src/statistics/agreement";
import { cohen1968, fleiss2003 } from "../published/fleiss-2003";

const Z = 1.95996398454005; // qnorm(0.975), R 4.2.2

function pairsOf(counts: readonly (readonly number[])[]) {
  const first: string[] = [];
  const second: string[] = [];
  counts.forEach((row, i) =>
    row.forEach((count, j) => {
      for (let each = 0; each < count; each += 1) {
        first.push(`result ${i}`);
        second.push(`result ${j}`);
      }
    }),
  );
  return [first, second] as const;
}

describe("published", () => {
  test.each([
    ["Fleiss, Levin & Paik (2003), table 18.1", fleiss2003, 2],
    ["Cohen (1968), table 1", cohen1968, 3],
  ] as const)("%s", (_, example, digits) => {
    const found = agreement(...pairsOf(example.counts));
    expect(found.n).toBe(example.n);
    expect(found.percent).toBeCloseTo(example.percent, 10);
    expect(Math.abs(found.kappa! - example.printedKappa)).toBeLessThan(0.51 * 10 ** -digits);
    expect(found.kappa).toBeCloseTo(example.kappa, 12);
    expect(found.lower).toBeCloseTo(example.kappa - Z * example.standardError, 10);
    expect(found.upper).toBeCloseTo(example.kappa + Z * example.standardError, 10);
  });
});

describe("by hand", () => {
  test("agreed 3 of 4, by chance 1/2: kappa 1/2", () => {
    const found = agreement(["met", "met", "not met", "not met"], ["met", "met", "not met", "met"]);
    // rows 1/2 and 1/2, columns 3/4 and 1/4: by chance 3/8 + 1/8
    expect(found).toMatchObject({ n: 4, percent: 75, kappa: expect.closeTo(1 / 2, 12) });
  });

  test("always agreed: 1, and nothing to doubt; never agreed, half and half: -1", () => {
    expect(agreement(["a", "b"], ["a", "b"])).toMatchObject({ percent: 100, kappa: 1, lower: 1, upper: 1 });
    expect(agreement(["a", "b"], ["b", "a"])).toMatchObject({ percent: 0, kappa: -1, lower: -1 });
  });

  test("one says always a, the other always b: no better than chance", () => {
    expect(agreement(["a", "a"], ["b", "b"])).toMatchObject({ percent: 0, kappa: 0 });
  });
});

describe("property", () => {
  const ratings = fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 })), {
    minLength: 2,
    maxLength: 40,
  });

  test("it does not matter who is first, how the pairs are ordered or what the results are called", () => {
    fc.assert(
      fc.property(ratings, (pairs) => {
        const first = pairs.map(([result]) => result);
        const second = pairs.map(([, result]) => result);
        const found = agreement(first, second);
        for (const other of [
          agreement(second, first),
          agreement([...first].reverse(), [...second].reverse()),
          agreement(
            first.map((each) => `x${9 - each}`),
            second.map((each) => `x${9 - each}`),
          ),
        ]) {
          expect(other.percent).toBe(found.percent);
          expect(other.kappa === null).toBe(found.kappa === null);
          if (found.kappa !== null) {
            expect(other.kappa).toBeCloseTo(found.kappa, 10);
            expect(other.lower).toBeCloseTo(found.lower!, 6);
          }
        }
      }),
      { seed: 17, numRuns: 200 },
    );
  });

  test("limits hold kappa and stay within -1 and 1", () => {
    fc.assert(
      fc.property(ratings, (pairs) => {
        const { kappa, lower, upper } = agreement(
          pairs.map(([a]) => a),
          pairs.map(([, b]) => b),
          0.99,
        );
        if (kappa === null) return;
        expect(lower).toBeGreaterThanOrEqual(-1);
        expect(upper).toBeLessThanOrEqual(1);
        expect(lower).toBeLessThanOrEqual(kappa + 1e-12);
        expect(upper).toBeGreaterThanOrEqual(kappa - 1e-12);
      }),
      { seed: 18, numRuns: 200 },
    );
  });
});

describe("refusal", () => {
  test("columns of different length, a level of 1", () => {
    expect(() => agreement(["a"], [])).toThrow(RangeError);
    expect(() => agreement(["a"], ["a"], 1)).toThrow(RangeError);
  });

  test("no pair, or one result only, is null with a reason", () => {
    expect(agreement([], [])).toMatchObject({
      n: 0,
      percent: null,
      kappa: null,
      reason: "there is no pair to compare",
    });
    expect(agreement(["a", "a", "a"], ["a", "a", "a"])).toMatchObject({
      n: 3,
      percent: 100,
      kappa: null,
      lower: null,
      upper: null,
      reason: expect.stringContaining("chance"),
    });
  });
});
