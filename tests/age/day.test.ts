import fc from "fast-check";
import { calendarOf, dayFromIso, dayOf, dayOrNull, isoOf } from "../../src/age/day";

test("counts from January 1, 1970, by hand", () => {
  expect(dayOf(1970, 1, 1)).toBe(0);
  expect(dayOf(1969, 12, 31)).toBe(-1);
  expect(dayOf(2000, 3, 1)).toBe(30 * 365 + 7 + 31 + 29); // leap days 1972 to 1996
});

test("agrees with the platform's UTC calendar on every day from 1800 to 2200", () => {
  for (let day = dayOf(1800, 1, 1); day <= dayOf(2200, 12, 31); day += 1) {
    const date = new Date(day * 86_400_000);
    const { year, month, dayOfMonth } = calendarOf(day);
    if (year !== date.getUTCFullYear() || month !== date.getUTCMonth() + 1 || dayOfMonth !== date.getUTCDate()) {
      throw new Error(`calendarOf(${day})`);
    }
  }
});

test("text and day are inverses", () => {
  fc.assert(fc.property(fc.integer({ min: -200_000, max: 200_000 }), (day) => dayFromIso(isoOf(day)) === day));
});

test.each(["2025-02-29", "1900-02-29", "2025-13-01", "2025-00-10", "2025-04-31", "2025-4-1", "01.04.2025", ""])(
  "%s is no date",
  (text) => {
    expect(dayFromIso(text)).toBeNull();
  },
);

test("2000 had a leap day, 1900 had none", () => {
  expect(dayOrNull(2000, 2, 29)).not.toBeNull();
  expect(dayOrNull(1900, 2, 29)).toBeNull();
});
