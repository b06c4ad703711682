import fc from "fast-check";
import { kaplanMeier, type KaplanMeier } from "../../src/statistics/kaplan-meier";
import { ageWhereShareMet, shareMetBy } from "../../src/statistics/kaplan-meier-reading";
import { npmle } from "../../src/statistics/npmle";
import { percentile } from "../../src/statistics/npmle-reading";
import { freireich1963 } from "../published/freireich-1963";
import { hyde1980 } from "../published/hyde-1980";
import { inventedDelayed } from "../published/survival-invented";
import { exactOrLater } from "./columns";

interface Expected {
  readonly age: readonly number[];
  readonly atRisk: readonly number[];
  readonly met: readonly number[];
  readonly surviving: readonly number[];
  readonly standardError: readonly (number | null)[];
  readonly lower?: readonly (number | null)[];
  readonly upper?: readonly (number | null)[];
}

const watched = (time: readonly number[], met: readonly number[], entry?: readonly number[]) => ({
  ageDays: Float64Array.from(time),
  met: Uint8Array.from(met),
  ...(entry === undefined ? {} : { entryDays: Float64Array.from(entry) }),
});

/** R lists ages without an event too; the curve has a step only where a child met the skill. */
function expectSteps(curve: KaplanMeier, expected: Expected): void {
  const events = expected.age.map((_, index) => index).filter((index) => expected.met[index]! > 0);
  expect(curve.steps.map((step) => step.ageDays)).toEqual(events.map((index) => expected.age[index]));
  const close = (value: number | null | undefined) => (typeof value === "number" ? expect.closeTo(value, 9) : null);
  events.forEach((index, step) => {
    const found = curve.steps[step]!;
    expect(found).toMatchObject({
      atRisk: expected.atRisk[index],
      met: expected.met[index],
      survival: close(expected.surviving[index]),
      standardError: close(expected.standardError[index]),
    });
    if (expected.lower === undefined || expected.upper === undefined) return;
    expect([found.lower, found.upper]).toEqual([close(expected.lower[index]), close(expected.upper[index])]);
  });
}

describe("published", () => {
  const { sixMp, placebo, printed } = freireich1963;

  test.each([
    ["6-MP", sixMp],
    ["placebo", placebo],
  ] as const)("Freireich et al. (1963), %s: R's survfit with log-log limits", (_, arm) => {
    expectSteps(kaplanMeier(watched(arm.time, arm.met), 0.95), arm.steps);
  });

  test("Freireich et al. (1963): shares, standard errors and medians as printed (memory)", () => {
    const curve = kaplanMeier(watched(sixMp.time, sixMp.met), 0.95);
    printed.age.forEach((week, index) => {
      const step = curve.steps.find((each) => each.ageDays === week)!;
      expect(Math.abs(step.survival - printed.surviving[index]!)).toBeLessThan(0.0006);
      expect(Math.abs(step.standardError! - printed.standardError[index]!)).toBeLessThan(0.0006);
    });
    expect(ageWhereShareMet(curve, 0.5).age).toBe(printed.medianSixMp);
    expect(ageWhereShareMet(kaplanMeier(watched(placebo.time, placebo.met), 0.95), 0.5).age).toBe(
      printed.medianPlacebo,
    );
  });

  test.each([
    ["6-MP", sixMp],
    ["placebo", placebo],
  ] as const)("Freireich et al. (1963), %s: R's quantiles and their limits", (_, { time, met, quantiles }) => {
    const curve = kaplanMeier(watched(time, met), 0.95);
    quantiles.share.forEach((share, index) => {
      expect(ageWhereShareMet(curve, share)).toEqual({
        age: quantiles.age[index],
        lower: quantiles.lower[index],
        upper: quantiles.upper[index],
      });
    });
  });

  const sex = (gender: number) => {
    const rows = [...hyde1980.gender.keys()].filter((row) => hyde1980.gender[row] === gender);
    const of = (column: readonly number[]) => rows.map((row) => column[row]!);
    return watched(of(hyde1980.exit), of(hyde1980.met), of(hyde1980.entry));
  };

  test("Hyde (1980), women, delayed entry", () => {
    expectSteps(kaplanMeier(sex(2), 0.95), hyde1980.female);
  });

  test("Hyde (1980), men: the first two to be watched bring the share to 0 for good, and that is said", () => {
    const curve = kaplanMeier(sex(1), 0.95);
    expectSteps(curve, hyde1980.male);
    expect(curve.exhaustedAtDays).toBe(781);
  });

  test("Hyde (1980), men from 68 years on", () => {
    const curve = kaplanMeier(sex(1), 0.95, 816);
    expectSteps(curve, hyde1980.maleFrom68);
    expect(curve.exhaustedAtDays).toBeNull();
  });

  test("invented children with delayed entry: R's survfit and its median", () => {
    const { exit, met, entry, steps, median } = inventedDelayed;
    const curve = kaplanMeier(watched(exit, met, entry), 0.95);
    expectSteps(curve, steps);
    const { estimate, lower, upper } = median.loglog;
    expect(ageWhereShareMet(curve, 0.5)).toEqual({ age: estimate, lower, upper });
  });
});

describe("by hand", () => {
  test("a child last seen on a day is still watched that day: 1 of 3 meets it on day 5, 1 of 1 on day 9", () => {
    const curve = kaplanMeier(watched([5, 5, 9], [1, 0, 1]), 0.95);
    expect(curve.steps.map(({ ageDays, atRisk, survival }) => [ageDays, atRisk, survival])).toEqual([
      [5, 3, 2 / 3],
      [9, 1, 0],
    ]);
  });

  test("a child who enters on a day is not at risk that day", () => {
    const curve = kaplanMeier(watched([5, 9], [1, 1], [0, 5]), 0.95);
    expect(curve.steps.map(({ atRisk }) => atRisk)).toEqual([1, 1]);
    expect(curve.exhaustedAtDays).toBe(5);
  });

  test("a child seen only at the moment of entry is not counted", () => {
    expect(kaplanMeier(watched([5, 9], [1, 1], [5, 0]), 0.95).n).toBe(1);
  });

  test("Greenwood's error of 1 of 4: sqrt((3/4)^2 x 1 / (4 x 3))", () => {
    const step = kaplanMeier(watched([1, 2, 2, 2], [1, 0, 0, 0]), 0.95).steps[0]!;
    expect(step.standardError).toBeCloseTo(Math.sqrt((9 / 16) * (1 / 12)), 12);
  });

  test("shares read between, before and after the ages seen", () => {
    const curve = kaplanMeier(watched([10, 20, 30], [1, 0, 0]), 0.95);
    expect(shareMetBy(curve, 9)).toEqual({ share: 0, lower: null, upper: null });
    expect(shareMetBy(curve, 30).share).toBeCloseTo(1 / 3, 12);
    expect(shareMetBy(curve, 31).share).toBeNull();
    // By hand: of three children each meets it on a day of its own; between the days the share is that of the day before.
    const days = kaplanMeier(watched([10, 20, 30], [1, 1, 1]), 0.95);
    expect([10, 19, 20, 29, 30].map((age) => shareMetBy(days, age).share! * 3)).toEqual(
      [1, 1, 2, 2, 3].map((met) => expect.closeTo(met, 12)),
    );
    expect(shareMetBy(kaplanMeier(watched([10], [1]), 0.95), 99)).toEqual({ share: 1, lower: null, upper: null });
  });

  test("thirds reach 1/3 on the first day, whatever the rounding", () => {
    const curve = kaplanMeier(watched([10, 20, 30], [1, 1, 1]), 0.95);
    expect([1 / 3, 2 / 3, 1].map((share) => ageWhereShareMet(curve, share).age)).toEqual([10, 20, 30]);
  });
});

describe("property", () => {
  const rows = fc.array(fc.tuple(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 1 })), {
    minLength: 1,
    maxLength: 40,
  });

  test("without entries and intervals the interval-censored estimate is the same curve", () => {
    fc.assert(
      fc.property(rows, (pairs) => {
        const time = pairs.map(([age]) => age);
        const met = pairs.map(([, each]) => each);
        const curve = kaplanMeier(watched(time, met), 0.95);
        const { after, by } = exactOrLater(time, met);
        const estimate = npmle(after, by);
        curve.steps.forEach((step) => {
          const index = estimate.to.indexOf(step.ageDays);
          expect(estimate.shareTo[index]).toBeCloseTo(1 - step.survival, 8);
        });
        expect(percentile(estimate, 0.5)).toEqual(ageWhereShareMet(curve, 0.5).age);
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  test("row order does not matter; doubling every child keeps the shares and narrows the limits", () => {
    fc.assert(
      fc.property(rows, (pairs) => {
        const of = (list: typeof pairs) =>
          kaplanMeier(
            watched(
              list.map(([age]) => age),
              list.map(([, each]) => each),
            ),
            0.95,
          );
        const once = of(pairs);
        expect(of([...pairs].reverse())).toEqual(once);
        of([...pairs, ...pairs]).steps.forEach((step, index) => {
          const single = once.steps[index]!;
          expect(step.survival).toBeCloseTo(single.survival, 12);
          if (step.lower === null || single.lower === null) return;
          expect(step.upper! - step.lower).toBeLessThanOrEqual(single.upper! - single.lower + 1e-12);
        });
      }),
      { seed: 22, numRuns: 200 },
    );
  });
});

describe("refusal", () => {
  test("columns of different length, ages that are not numbers, a level or share out of range", () => {
    expect(() => kaplanMeier(watched([1, 2], [1]), 0.95)).toThrow(RangeError);
    expect(() => kaplanMeier(watched([1, 2], [1, 1], [0]), 0.95)).toThrow(RangeError);
    expect(() => kaplanMeier(watched([NaN], [1]), 0.95)).toThrow(RangeError);
    expect(() => kaplanMeier(watched([Infinity], [1]), 0.95)).toThrow(RangeError);
    expect(() => kaplanMeier(watched([1], [1], [NaN]), 0.95)).toThrow(RangeError);
    expect(() => kaplanMeier(watched([1], [1]), 1)).toThrow(RangeError);
    const curve = kaplanMeier(watched([1], [1]), 0.95);
    expect(() => ageWhereShareMet(curve, 0)).toThrow(RangeError);
    expect(() => shareMetBy(curve, NaN)).toThrow(RangeError);
  });

  test("nobody met it: no step, no age, no share", () => {
    const curve = kaplanMeier(watched([5, 6], [0, 0]), 0.95);
    expect(curve.steps).toEqual([]);
    expect(ageWhereShareMet(curve, 0.1)).toEqual({ age: null, lower: null, upper: null });
    expect(shareMetBy(curve, 5).share).toBeNull();
  });
});
