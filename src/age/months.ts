import { calendarOf, type Day, dayOf, daysInMonth } from "./day";

/** Days in a mean month, the convention of the WHO Child Growth Standards (2006): 365.25 / 12. */
export const DAYS_PER_MEAN_MONTH = 30.4375;

/** The day `months` calendar months after the anchor, clamped to the month's last day (31 January + 1 = 28 or 29 February). */
export function addMonths(anchor: Day, months: number): Day {
  const { year, month, dayOfMonth } = calendarOf(anchor);
  const index = year * 12 + (month - 1) + months;
  const toYear = Math.floor(index / 12);
  const toMonth = index - toYear * 12 + 1;
  return dayOf(toYear, toMonth, Math.min(dayOfMonth, daysInMonth(toYear, toMonth)));
}

/** The largest n, also negative, such that the anchor plus n months is not after the day. */
export function completedMonths(anchor: Day, on: Day): number {
  const from = calendarOf(anchor);
  const to = calendarOf(on);
  const months = (to.year - from.year) * 12 + (to.month - from.month);
  const reached = Math.min(from.dayOfMonth, daysInMonth(to.year, to.month)) <= to.dayOfMonth;
  return reached ? months : months - 1;
}

/**
 * Age in months: completed months plus the share of the running month that has passed (0 to 1).
 * Whole at every month birthday, and never falls as days pass. This is what windows and bands are compared with.
 */
export function decimalMonths(anchor: Day, on: Day): number {
  const completed = completedMonths(anchor, on);
  const start = addMonths(anchor, completed);
  const end = addMonths(anchor, completed + 1);
  return completed + (on - start) / (end - start);
}

/** The first day on which `decimalMonths(anchor, day) >= months`; `months` may have decimals, or be infinite. */
export function firstDayAtAge(anchor: Day, months: number): Day {
  if (!Number.isFinite(months)) return months;
  const whole = Math.floor(months);
  const start = addMonths(anchor, whole);
  const end = addMonths(anchor, whole + 1);
  let day = start + Math.floor((months - whole) * (end - start));
  while (day > start && decimalMonths(anchor, day - 1) >= months) day -= 1;
  while (decimalMonths(anchor, day) < months) day += 1;
  return day;
}
