import fc from "fast-check";
import { benjaminiHochberg, holm } from "../../src/statistics/multiplicity";
import { benjaminiHochberg1995 } from "../published/benjamini-hochberg-1995";

const closeTo = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 12));

describe("published", () => {
  const { p, keptByBh, keptByBonferroni, holm: holmAdjusted, bh } = benjaminiHochberg1995;

  test("Benjamini & Hochberg (1995): 4 of 15 kept at 0.05, 3 by Holm as by Bonferroni", () => {
    expect(benjaminiHochberg(p).filter((value) => value <= 0.05)).toHaveLength(keptByBh);
    expect(holm(p).filter((value) => value <= 0.05)).toHaveLength(keptByBonferroni);
  });

  test("R's p.adjust", () => {
    expect(holm(p)).toEqual(closeTo(holmAdjusted));
    expect(benjaminiHochberg(p)).toEqual(closeTo(bh));
  });

  /** p.adjust(c(0.01, 0.04, 0.03, 0.005), "holm") and "BH", R 4.2.2 */
  test("the order given is kept", () => {
    expect(holm([0.01, 0.04, 0.03, 0.005])).toEqual(closeTo([0.03, 0.06, 0.06, 0.02]));
    expect(benjaminiHochberg([0.01, 0.04, 0.03, 0.005])).toEqual(closeTo([0.02, 0.04, 0.04, 0.02]));
  });
});

describe("by hand", () => {
  test("one value stays as it is, none gives none", () => {
    expect([holm([0.3]), benjaminiHochberg([0.3]), holm([]), benjaminiHochberg([])]).toEqual([[0.3], [0.3], [], []]);
  });

  test("0.01 and 0.5: Holm doubles the first; the step-up gives 2 x 0.01 / 1 and 2 x 0.5 / 2", () => {
    expect(holm([0.5, 0.01])).toEqual([0.5, 0.02]);
    expect(benjaminiHochberg([0.5, 0.01])).toEqual([0.5, 0.02]);
  });
});

describe("property", () => {
  const values = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 40 });

  test("adjusted values keep the order of the raw ones, are not below them, and Holm's are not below the other's", () => {
    fc.assert(
      fc.property(values, (p) => {
        const strict = holm(p);
        const loose = benjaminiHochberg(p);
        p.forEach((raw, i) => {
          expect(strict[i]).toBeLessThanOrEqual(1);
          expect(loose[i]! + 1e-12).toBeGreaterThanOrEqual(raw);
          expect(strict[i]! + 1e-12).toBeGreaterThanOrEqual(loose[i]!);
          p.forEach((other, j) => {
            if (raw < other) expect(strict[i]!).toBeLessThanOrEqual(strict[j]! + 1e-15);
            if (raw < other) expect(loose[i]!).toBeLessThanOrEqual(loose[j]! + 1e-15);
          });
        });
      }),
      { seed: 16, numRuns: 100 },
    );
  });
});

describe("refusal", () => {
  test.each([-0.1, 1.1, NaN])("%d is not a p value", (p) => {
    expect(() => holm([0.5, p])).toThrow(RangeError);
    expect(() => benjaminiHochberg([0.5, p])).toThrow(RangeError);
  });
});
