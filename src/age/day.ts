/**
 * A calendar day with no time and no time zone, as whole days since January 1, 1970 (Gregorian throughout).
 * Days before 1970 are negative.
 */
export type Day = number;

export interface CalendarDay {
  readonly year: number;
  /** 1 to 12 */
  readonly month: number;
  /** 1 to 31 */
  readonly dayOfMonth: number;
}

const DAYS_PER_ERA = 146_097;
const DAYS_BEFORE_1970 = 719_468;

/**
 * The day of a date of the proleptic Gregorian calendar.
 * Source: Hinnant, "chrono-compatible low-level date algorithms" (days_from_civil), public domain.
 */
export function dayOf(year: number, month: number, dayOfMonth: number): Day {
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + dayOfMonth - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * DAYS_PER_ERA + dayOfEra - DAYS_BEFORE_1970;
}

/** The date of a day: the inverse of `dayOf`, from the same source (civil_from_days). */
export function calendarOf(day: Day): CalendarDay {
  const shifted = day + DAYS_BEFORE_1970;
  const era = Math.floor(shifted / DAYS_PER_ERA);
  const dayOfEra = shifted - era * DAYS_PER_ERA;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    dayOfMonth: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
}

export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Days in a month, `month` from 1 to 12. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** The day of a date, or null where the calendar has no such date (30 February). */
export function dayOrNull(year: number, month: number, dayOfMonth: number): Day | null {
  const exists = month >= 1 && month <= 12 && dayOfMonth >= 1 && dayOfMonth <= daysInMonth(year, month);
  return exists ? dayOf(year, month, dayOfMonth) : null;
}

/** `2026-09-30`. */
export function isoOf(day: Day): string {
  const { year, month, dayOfMonth } = calendarOf(day);
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(dayOfMonth)}`;
}

/** The day of an ISO 8601 calendar date, or null where the text is none or the date does not exist. */
export function dayFromIso(text: string): Day | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  return match ? dayOrNull(Number(match[1]), Number(match[2]), Number(match[3])) : null;
}

function two(value: number): string {
  return String(value).padStart(2, "0");
}
