import { ageInWords, correctedAgeInWords } from "../../age/age-in-words";
import { type AgeClock, anchorOn } from "../../age/correction";
import type { Day } from "../../age/day";
import { completedMonths } from "../../age/months";
import type { Skill } from "../../records/records";
import { plural } from "../../words/numbers";
import type { ChildFacts } from "./child-facts";

/** Each with its word beside it: a filled mark is met, a hollow one not met, a struck one lost. */
export const MARK = { met: "●", notMet: "○", lost: "⊘" } as const;

export function labelOf({ label, id }: Skill): string {
  return label === "" ? id : label;
}

/** `11 months 2 days old, corrected 9 months 1 day`: both ages of a day, where they differ. */
export function bothAges(clock: AgeClock, on: Day): string {
  const corrected = correctedAgeInWords(clock, on);
  return `${ageInWords(clock.birth, on)} old${corrected === null ? "" : `, ${corrected}`}`;
}

/** `13 months old (10 months counted from the due date)`, in round numbers. */
export function agesInWords(clock: AgeClock, on: Day): string {
  const due = anchorOn(clock, on);
  const old = `${roundAge(clock.birth, on)} old`;
  if (due === clock.birth) return old;
  return on < due ? `${old}, and not yet at the due date` : `${old} (${roundAge(due, on)} from the due date)`;
}

/** Weeks for the first two months, then months. */
function roundAge(from: Day, on: Day): string {
  const months = completedMonths(from, on);
  return months < 2 ? plural(Math.floor((on - from) / 7), "week", "weeks") : `${months} months`;
}

/** `12 months`, `17.6 months` */
export function monthsInWords(months: number): string {
  return `${Number.isInteger(months) ? months : months.toFixed(1)} months`;
}

export function isBeforeDueDate({ clock, context: { asOf } }: Pick<ChildFacts, "clock" | "context">): boolean {
  return asOf < clock.correctedBirth;
}

/** At most so many, and how many more there are. */
export function someOf(lines: readonly string[], most: number): string[] {
  const more = lines.length - most;
  return more > 0 ? [...lines.slice(0, most), `And ${more} more.`] : [...lines];
}
