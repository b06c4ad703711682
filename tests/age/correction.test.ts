import fc from "fast-check";
import { ageClock, ageDaysOn, ageMonthsOn, type CorrectionRule, firstDayOfAge } from "../../src/age/correction";
import { dayFromIso } from "../../src/age/day";
import { addMonths, completedMonths } from "../../src/age/months";
import { CORRECTED_AGES, CORRECTED_WEEKS } from "../published/corrected-ages";

const day = (iso: string) => dayFromIso(iso) as number;
const usual: CorrectionRule = { belowDays: 259, untilMonths: 24, untilAge: "chronological" };
const always: CorrectionRule = { ...usual, untilMonths: Infinity };

test.each(CORRECTED_AGES)(
  "born %s, on %s, gestation %i days: corrected %i days",
  (birth, on, gestation, days, months) => {
    const clock = ageClock(day(birth), gestation, always);
    expect(ageDaysOn(clock, day(on))).toBe(days);
    if (months !== null) expect(completedMonths(clock.correctedBirth, day(on))).toBe(months);
  },
);

test.each(CORRECTED_WEEKS)(
  "%s: %i weeks of gestation, %i weeks old, corrected %i",
  (_source, gestation, age, corrected) => {
    const birth = day("2001-03-19");
    expect(ageDaysOn(ageClock(birth, gestation * 7, usual), birth + age * 7)).toBe(corrected * 7);
  },
);

/** AAP (2004): 24 months at 28 weeks is 24 - (40 - 28) x 1 month / 4 weeks = 21. Formula read in a paraphrase, example from memory. */
test("24 months at 28 weeks is 21 completed months while correction runs", () => {
  const birth = day("2022-01-10");
  const clock = ageClock(birth, 28 * 7, always);
  expect(completedMonths(clock.correctedBirth, addMonths(birth, 24))).toBe(21);
});

test("born before 37 weeks 0 days is corrected, at 37 weeks 0 days not", () => {
  expect(ageDaysOn(ageClock(0, 258, usual), 100)).toBe(100 - 22);
  expect(ageDaysOn(ageClock(0, 259, usual), 100)).toBe(100);
  expect(ageDaysOn(ageClock(0, null, usual), 100)).toBe(100);
});

test.each([
  [36 * 7, 28],
  [24 * 7, 112],
])("where correction stops, a child of %i days of gestation ages %i days in one", (gestation, jump) => {
  const birth = day("2022-01-31");
  const clock = ageClock(birth, gestation, usual);
  const stop = addMonths(birth, 24);
  expect(clock.stops).toBe(stop);
  expect(ageDaysOn(clock, stop) - ageDaysOn(clock, stop - 1)).toBe(jump + 1);
});

test("the stop can be read on corrected age, or never come", () => {
  const birth = day("2022-01-31");
  expect(ageClock(birth, 196, { ...usual, untilAge: "corrected" }).stops).toBe(addMonths(birth + 84, 24));
  expect(ageClock(birth, 196, always).stops).toBe(Infinity);
});

test("age is negative before the day the child was due", () => {
  expect(ageDaysOn(ageClock(0, 200, usual), 10)).toBe(-70);
});

test("age never falls, and the first day of an age is the first one, across the stop", () => {
  const rules = fc.record({
    belowDays: fc.constantFrom(0, 224, 259),
    untilMonths: fc.constantFrom(12, 24, 36, Infinity),
    untilAge: fc.constantFrom("chronological" as const, "corrected" as const),
  });
  const arbitrary = fc.tuple(fc.integer({ min: 18_000, max: 20_000 }), fc.integer({ min: 140, max: 321 }), rules);
  fc.assert(
    fc.property(arbitrary, fc.integer({ min: -30, max: 400 }), ([birth, gestation, rule], tenths) => {
      const clock = ageClock(birth, gestation, rule);
      const first = firstDayOfAge(clock, tenths / 10);
      if (first <= birth) return;
      expect(ageMonthsOn(clock, first)).toBeGreaterThanOrEqual(tenths / 10);
      expect(ageMonthsOn(clock, first - 1)).toBeLessThan(tenths / 10);
    }),
  );
});
