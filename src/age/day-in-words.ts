import { UTCDate } from "@date-fns/utc";
import { format } from "date-fns";
import { calendarOf, type Day } from "./day";

/** `30 September 2026`, in whatever time zone. */
export function dayInWords(day: Day): string {
  const { year, month, dayOfMonth } = calendarOf(day);
  return format(new UTCDate(year, month - 1, dayOfMonth), "d MMMM yyyy");
}
