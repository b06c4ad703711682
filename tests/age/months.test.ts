import fc from "fast-check";
import { dayFromIso, dayOf, isoOf } from "../../src/age/day";
import { addMonths, completedMonths, DAYS_PER_MEAN_MONTH, decimalMonths, firstDayAtAge } from "../../src/age/months";
import { COMPLETED_MONTHS } from "../published/completed-months";

const day = (iso: string) => dayFromIso(iso) as number;
const anyDay = fc.integer({ min: dayOf(1999, 1, 1), max: dayOf(2031, 12, 31) });

test.each(COMPLETED_MONTHS)(
  "born %s, on %s: %i days, %i completed months",
  (birth, on, ageDays, completed, meanMonths) => {
    expect(day(on) - day(birth)).toBe(ageDays);
    expect(completedMonths(day(birth), day(on))).toBe(completed);
    expect((day(on) - day(birth)) / DAYS_PER_MEAN_MONTH).toBeCloseTo(meanMonths, 9);
  },
);

test.each([
  ["2023-01-31", 1, "2023-02-28"],
  ["2024-01-31", 1, "2024-02-29"],
  ["2024-01-31", 2, "2024-03-31"],
  ["2024-02-29", 12, "2025-02-28"],
  ["2024-02-29", 48, "2028-02-29"],
  ["2024-03-31", -1, "2024-02-29"],
  ["2024-01-15", -13, "2022-12-15"],
])("%s plus %i months is %s", (from, months, to) => {
  expect(isoOf(addMonths(day(from), months))).toBe(to);
});

test("decimal months, by hand", () => {
  expect(decimalMonths(day("2024-01-01"), day("2024-02-01"))).toBe(1);
  expect(decimalMonths(day("2024-01-01"), day("2024-02-16"))).toBe(1 + 15 / 29);
  expect(decimalMonths(day("2024-01-31"), day("2024-03-01"))).toBe(1 + 1 / 31); // from 29 February to 31 March
  expect(decimalMonths(day("2024-03-10"), day("2024-03-09"))).toBe(-1 + 28 / 29); // negative before the anchor
});

test("decimal months never fall, and are whole at every month birthday", () => {
  fc.assert(
    fc.property(anyDay, fc.integer({ min: -100, max: 1500 }), (anchor, since) => {
      const now = decimalMonths(anchor, anchor + since);
      expect(decimalMonths(anchor, anchor + since + 1)).toBeGreaterThan(now);
      expect(now - completedMonths(anchor, anchor + since)).toBeGreaterThanOrEqual(0);
      expect(now - completedMonths(anchor, anchor + since)).toBeLessThan(1);
    }),
  );
  fc.assert(
    fc.property(anyDay, fc.integer({ min: -12, max: 48 }), (anchor, months) => {
      expect(decimalMonths(anchor, addMonths(anchor, months))).toBe(months);
    }),
  );
});

test("the first day at an age is the first one", () => {
  fc.assert(
    fc.property(anyDay, fc.integer({ min: -30, max: 480 }), (anchor, tenths) => {
      const first = firstDayAtAge(anchor, tenths / 10);
      expect(decimalMonths(anchor, first)).toBeGreaterThanOrEqual(tenths / 10);
      expect(decimalMonths(anchor, first - 1)).toBeLessThan(tenths / 10);
    }),
  );
});
