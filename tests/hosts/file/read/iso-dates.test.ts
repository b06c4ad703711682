import { serialFromIso } from "../../../../src/hosts/file/read/iso-dates";

/** Day 1 is January 1, 1900, and day 60 is counted though 1900 had no February 29: ECMA-376 Part 1, 18.17.4.1. */
const JANUARY_1_1901 = 367;

test("the last second of a day is still that day, and no later clock is one", () => {
  expect(serialFromIso("1901-01-01", 1900)).toBe(JANUARY_1_1901);
  expect(serialFromIso("1901-01-01T23:59:59", 1900)).toBeCloseTo(JANUARY_1_1901 + 86_399 / 86_400, 9);
  for (const clock of ["24:00:00", "23:60:00", "23:59:60"])
    expect(serialFromIso(`1901-01-01T${clock}`, 1900)).toBeNull();
});
