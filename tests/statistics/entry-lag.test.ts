import fc from "fast-check";
import { daysUntilMissing, entryLag, shareEnteredWithin, shareStillMissing } from "../../src/statistics/entry-lag";
import { randomFrom } from "../../src/statistics/random";

/**
 * A triangle worked by hand. Looks on days 0, 1 and 2, records closed on day 2. Of day 0: 4 entered at once, 2 a day later,
 * 2 two days later. Of day 1: 3 at once, 3 a day later. Of day 2: 5 at once.
 * Lag 2 among those watched for 2 days: 2 of 8. Lag 1 among those entered within 1 day and watched for 1 day: 5 of 12.
 * Within 1 day: 3/4. Within 0 days: 3/4 x 7/12 = 7/16.
 */
const LAG = [0, 0, 0, 0, 1, 1, 2, 2, 0, 0, 0, 1, 1, 1, 0, 0, 0, 0, 0];
const ELAPSED = [2, 2, 2, 2, 2, 2, 2, 2, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0];
const lag = entryLag(Int32Array.from(LAG), Int32Array.from(ELAPSED));

describe("by hand", () => {
  test("reverse-time hazards 2/8 and 5/12", () => {
    expect([...lag.within]).toEqual([7 / 16, 3 / 4, 1].map((share) => expect.closeTo(share, 14)));
    expect([-1, 0, 1, 2, 99].map((days) => shareEnteredWithin(lag, days))).toEqual(
      [0, 7 / 16, 3 / 4, 1, 1].map((share) => expect.closeTo(share, 14)),
    );
  });

  test("the 5 looks of day 2 stand for 80/7: 9/16 are still missing; the 6 of day 1 for 8, a quarter missing", () => {
    expect(shareStillMissing(lag, [0, 0, 0, 0, 0])).toBeCloseTo(9 / 16, 14);
    expect(shareStillMissing(lag, [1, 1, 1, 1, 1, 1])).toBeCloseTo(1 / 4, 14);
  });

  test("all days together: 8 + 8 + 80/7 looks, of which 2 + 45/7 are missing; a day later 9/16 less of each", () => {
    const all = 8 + 8 + 80 / 7;
    expect(shareStillMissing(lag, ELAPSED)).toBeCloseTo((2 + 45 / 7) / all, 14);
    expect(shareStillMissing(lag, ELAPSED, 1)).toBeCloseTo(20 / 7 / all, 14);
    expect(shareStillMissing(lag, ELAPSED, 2)).toBe(0);
  });

  test("the first day with at most 11% missing is the next one, with at most 10% the one after", () => {
    expect(daysUntilMissing(lag, ELAPSED, 0.11, 0)).toBe(1);
    expect(daysUntilMissing(lag, ELAPSED, 0.1, 0)).toBe(2);
    expect(daysUntilMissing(lag, [2, 2], 0.5, -2)).toBe(-1);
  });

  test("all entered at once: nothing is missing", () => {
    const atOnce = entryLag(Int32Array.of(0, 0), Int32Array.of(5, 0));
    expect(shareStillMissing(atOnce, [0])).toBe(0);
    expect(daysUntilMissing(atOnce, [0, 5], 0.02, 0)).toBe(0);
  });

  test("no look, or one that the lags rule out: null", () => {
    expect(shareStillMissing(lag, [])).toBeNull();
    const allLate = entryLag(Int32Array.of(3, 3), Int32Array.of(9, 9));
    expect(shareStillMissing(allLate, [1])).toBeNull();
    expect(daysUntilMissing(allLate, [1], 0.02, 0)).toBeNull();
  });
});

describe("property", () => {
  const lags = fc.array(fc.tuple(fc.nat(20), fc.nat(20)), { minLength: 1, maxLength: 60 });

  test("with every look watched long enough it is the plain share of lags", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(20), { minLength: 1, maxLength: 60 }), (drawn) => {
        const { within } = entryLag(
          Int32Array.from(drawn),
          Int32Array.from(drawn, () => 100),
        );
        within.forEach((share, days) => {
          expect(share).toBeCloseTo(drawn.filter((each) => each <= days).length / drawn.length, 12);
        });
      }),
    );
  });

  test("agrees with the hazards counted one day at a time, and never falls", () => {
    fc.assert(
      fc.property(lags, (drawn) => {
        const rows = drawn.map(([lagDays, more]) => ({ lagDays, elapsed: lagDays + more }));
        const { within } = entryLag(
          Int32Array.from(rows, (row) => row.lagDays),
          Int32Array.from(rows, (row) => row.elapsed),
        );
        let share = 1;
        for (let day = within.length - 1; day >= 1; day -= 1) {
          const atRisk = rows.filter((row) => row.lagDays <= day && row.elapsed >= day);
          share *= 1 - atRisk.filter((row) => row.lagDays === day).length / Math.max(1, atRisk.length);
          expect(within[day - 1]).toBeCloseTo(share, 12);
        }
      }),
    );
  });
});

/** Lags of a geometric law, entered with chance 1/4 each day: within d days 1 - 0.75^(d + 1). Seeded; half of it can be seen. */
test("the law behind truncated lags is found, where the share seen is far off", () => {
  const random = randomFrom(5);
  const seen: [number, number][] = [];
  for (let draw = 0; draw < 60_000; draw += 1) {
    const elapsed = random.nextInt(40);
    const drawn = Math.floor(Math.log(1 - random.nextUnit()) / Math.log(0.75));
    if (drawn <= elapsed) seen.push([drawn, elapsed]);
  }
  const found = entryLag(
    Int32Array.from(seen, ([each]) => each),
    Int32Array.from(seen, ([, each]) => each),
  );
  const naive = seen.filter(([each]) => each <= 2).length / seen.length;
  expect(Math.abs(shareEnteredWithin(found, 2) - (1 - 0.75 ** 3))).toBeLessThan(0.01);
  expect(Math.abs(naive - (1 - 0.75 ** 3))).toBeGreaterThan(0.03);
});

test("refusal", () => {
  const of = (lagDays: number[], elapsed: number[]) => () =>
    entryLag(Int32Array.from(lagDays), Int32Array.from(elapsed));
  expect(of([1], [])).toThrow(RangeError);
  expect(of([-1], [1])).toThrow(RangeError);
  expect(of([2], [1])).toThrow(RangeError);
});
