import fc from "fast-check";
import { dayFromIso } from "../../src/age/day";
import { dayFromSerial, serialOf } from "../../src/age/serial";

/** ECMA-376 Part 1, 18.17.4.1: serial 1 is January 1, 1900, 60 the false leap day; 1904: serial 0 is January 1, 1904. Dates of 36526 and 39448 from memory. */
test.each([
  [1, 1900, "1900-01-01"],
  [59, 1900, "1900-02-28"],
  [61, 1900, "1900-03-01"],
  [36_526, 1900, "2000-01-01"],
  [39_448, 1900, "2008-01-01"],
  [0, 1904, "1904-01-01"],
  [36_526 - 1462, 1904, "2000-01-01"],
] as const)("serial %i of the %i system is %s", (serial, system, iso) => {
  expect(dayFromSerial(serial, system)).toBe(dayFromIso(iso));
  expect(serialOf(dayFromIso(iso) as number, system)).toBe(serial);
});

test("the false February 29, 1900, zero, negatives and days after 9999 are no dates", () => {
  for (const serial of [60, 60.5, 0, 0.5, -1, 2_958_466, Number.NaN]) expect(dayFromSerial(serial, 1900)).toBeNull();
  expect(dayFromSerial(-1, 1904)).toBeNull();
});

test("a fraction of a day is dropped", () => {
  expect(dayFromSerial(36_526.999, 1900)).toBe(dayFromIso("2000-01-01"));
});

test("the systems stand 1,462 days apart", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1462, max: 100_000 }),
      (serial) => dayFromSerial(serial, 1900) === dayFromSerial(serial - 1462, 1904),
    ),
  );
});
