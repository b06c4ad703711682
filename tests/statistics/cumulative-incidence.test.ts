import fc from "fast-check";
import { cumulativeIncidence, daysUntilTaken, shareTakenBy } from "../../src/statistics/cumulative-incidence";
import { kaplanMeier } from "../../src/statistics/kaplan-meier";
import { shareMetBy } from "../../src/statistics/kaplan-meier-reading";
import * as published from "../published/competing-invented";

const curveOf = (days: readonly number[], ending: readonly number[]) =>
  cumulativeIncidence({ days: Float64Array.from(days), ending: Uint8Array.from(ending) });

describe("published", () => {
  const { steps } = curveOf(published.DAYS, published.ENDINGS);

  test.each(published.STATES)("R survival, day %i: %i at risk", (day, atRisk, waiting, step, needless) => {
    const found = steps.find(({ days }) => days === day);
    expect(found?.atRisk).toBe(atRisk);
    expect(found?.waiting).toBeCloseTo(waiting, 10);
    expect(found?.step).toBeCloseTo(step, 10);
    expect(found?.needless).toBeCloseTo(needless, 10);
  });

  test("R survival, plan by day 45 of those not found ineligible by then", () => {
    expect(shareTakenBy(curveOf(published.DAYS, published.ENDINGS), 45)).toBeCloseTo(published.PLAN_BY_45, 10);
  });

  test("R survival, one ending alone: Kaplan and Meier", () => {
    const alone = published.ENDINGS.map((ending) => (ending === 1 ? 1 : 0));
    expect(shareTakenBy(curveOf(published.DAYS, alone), 45)).toBeCloseTo(published.ONE_ENDING_BY_45, 10);
  });
});

describe("by hand", () => {
  test("4 waits, plan on day 10, needless on day 20, open on day 30, plan on day 40: 1/4, then 1/4 needless, then 1/2 more", () => {
    const curve = curveOf([10, 20, 30, 40], [1, 2, 0, 1]);
    expect(curve.steps).toEqual([
      { days: 10, atRisk: 4, step: 1 / 4, needless: 0, waiting: 3 / 4 },
      { days: 20, atRisk: 3, step: 1 / 4, needless: 1 / 4, waiting: 1 / 2 },
      { days: 40, atRisk: 1, step: 3 / 4, needless: 1 / 4, waiting: 0 },
    ]);
    expect(shareTakenBy(curve, 20)).toBeCloseTo(1 / 4 / (3 / 4), 12);
    expect(daysUntilTaken(curve, 0.5)).toBe(40);
  });

  test("watched to day 45 without a step: 0; not watched so long: cannot be told; all done sooner: 1", () => {
    expect(shareTakenBy(curveOf([45, 60], [0, 0]), 45)).toBe(0);
    expect(shareTakenBy(curveOf([44, 10], [0, 1]), 45)).toBeNull();
    expect(shareTakenBy(curveOf([10, 20], [1, 1]), 45)).toBe(1);
  });

  test("nobody waits, or every wait became needless: no share, no day", () => {
    for (const curve of [curveOf([], []), curveOf([5, 45], [2, 2])]) {
      expect(shareTakenBy(curve, 45)).toBeNull();
      expect(daysUntilTaken(curve, 0.5)).toBeNull();
    }
  });
});

describe("property", () => {
  const wait = fc.tuple(fc.nat(60), fc.constantFrom(0, 1, 2));

  test("what ended and what waits make 1, and no order of rows matters", () => {
    fc.assert(
      fc.property(fc.array(wait, { maxLength: 30 }), (waits) => {
        const curve = (rows: typeof waits) =>
          curveOf(
            rows.map(([days]) => days),
            rows.map(([, ending]) => ending),
          );
        for (const { step, needless, waiting } of curve(waits).steps)
          expect(step + needless + waiting).toBeCloseTo(1, 12);
        expect(curve([...waits].reverse())).toEqual(curve(waits));
      }),
    );
  });

  test("with one ending it is Kaplan and Meier's estimate", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(60), fc.constantFrom(0, 1)), { minLength: 1, maxLength: 30 }), (waits) => {
        const [days, met] = [waits.map(([day]) => day), waits.map(([, ending]) => ending)];
        const km = kaplanMeier({ ageDays: Float64Array.from(days), met: Uint8Array.from(met) }, 0.95);
        fc.pre(km.steps.length > 0);
        const [one, other] = [shareTakenBy(curveOf(days, met), 45), shareMetBy(km, 45).share];
        if (other === null) expect(one).toBeNull();
        else expect(one).toBeCloseTo(other, 12);
      }),
    );
  });
});

test("refusal", () => {
  expect(() => curveOf([1, 2], [1])).toThrow(RangeError);
  expect(() => curveOf([NaN], [1])).toThrow(RangeError);
});
