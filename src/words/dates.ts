import { UTCDate } from "@date-fns/utc";
import { format } from "date-fns";
import { calendarOf, type Day, dayFromIso } from "../age/day";

/** `September 30, 2026`, in whatever time zone. */
export function dayInWords(day: Day): string {
  return formatted(day, "MMMM d, yyyy");
}

/** `September 2026`, from `2026-09`. */
export function monthInWords(label: string): string {
  const first = dayFromIso(`${label}-01`);
  return first === null ? label : formatted(first, "MMMM yyyy");
}

/** `January to March 2026`, `November 2025 to January 2026`, `March 2026`. */
export function monthsInWords(first: string, last: string): string {
  if (first === last) return monthInWords(first);
  const sameYear = first.slice(0, 4) === last.slice(0, 4);
  return `${sameYear ? monthInWords(first).slice(0, -5) : monthInWords(first)} to ${monthInWords(last)}`;
}

/** `July to September 2026`, from `2026-Q3`. */
export function quarterInWords(label: string): string {
  const found = /^(\d{4})-Q([1-4])$/.exec(label);
  if (!found) return label;
  const [, year, quarter] = found as unknown as [string, string, string];
  const month = (at: number) => `${year}-${String(3 * Number(quarter) - 3 + at).padStart(2, "0")}`;
  return monthsInWords(month(1), month(3));
}

/** `September 2026`, the last month of `2026-Q3`. */
export function quarterEndInWords(label: string): string {
  return quarterInWords(label).replace(/^.* to /, "");
}

function formatted(day: Day, pattern: string): string {
  const { year, month, dayOfMonth } = calendarOf(day);
  return format(new UTCDate(year, month - 1, dayOfMonth), pattern);
}
