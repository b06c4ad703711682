import { calendarOf, type Day } from "../../age/day";

/** `31/03/2026` */
export function dayFirst(day: Day): string {
  const { year, month, dayOfMonth } = calendarOf(day);
  return `${String(dayOfMonth).padStart(2, "0")}/${String(month).padStart(2, "0")}/${year}`;
}
