import { type Day, dayOf } from "./day";

/** The two ways in which a workbook counts days. */
export type DateSystem = 1900 | 1904;

const BEFORE_1900 = dayOf(1899, 12, 30);
const BEFORE_1904 = dayOf(1904, 1, 1);
const LAST_SERIAL_1900 = 2_958_465;
const FALSE_LEAP_DAY = 60;

/**
 * The day of a worksheet serial number; null where the serial is no date.
 *
 * In the 1900 system serial 60 stands for February 29, 1900, a day that never was: it gives null, and the serials
 * below it count from December 31, 1899. A fraction (the time of day) is dropped.
 * Source: ECMA-376 Part 1, 18.17.4.1 "Dates and times in spreadsheets".
 */
export function dayFromSerial(serial: number, system: DateSystem): Day | null {
  const whole = Math.floor(serial);
  if (system === 1904) return whole >= 0 && whole <= LAST_SERIAL_1900 - 1462 ? BEFORE_1904 + whole : null;
  if (!(whole >= 1 && whole <= LAST_SERIAL_1900) || whole === FALSE_LEAP_DAY) return null;
  return whole < FALSE_LEAP_DAY ? BEFORE_1900 + whole + 1 : BEFORE_1900 + whole;
}

/** The serial number of a day: the inverse of `dayFromSerial`. */
export function serialOf(day: Day, system: DateSystem): number {
  if (system === 1904) return day - BEFORE_1904;
  const serial = day - BEFORE_1900;
  return serial <= FALSE_LEAP_DAY ? serial - 1 : serial;
}
