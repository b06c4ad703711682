import { type AgeClock, anchorOn } from "./correction";
import type { Day } from "./day";
import { addMonths, completedMonths } from "./months";

/** `7 months 12 days`, counted from the day of birth. */
export function ageInWords(birth: Day, on: Day): string {
  const months = completedMonths(birth, on);
  return `${counted(months, "month")} ${counted(on - addMonths(birth, months), "day")}`;
}

/**
 * `corrected 5 months 3 days`, or `12 days before the due date`; null where the corrected age is not
 * another one that day.
 */
export function correctedAgeInWords(clock: AgeClock, on: Day): string | null {
  const due = anchorOn(clock, on);
  if (due === clock.birth) return null;
  return on < due ? `${counted(due - on, "day")} before the due date` : `corrected ${ageInWords(due, on)}`;
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? "" : "s"}`;
}
