import { ageInWords, correctedAgeInWords } from "../../age/age-in-words";
import { type AgeClock, anchorOn } from "../../age/correction";
import type { Day } from "../../age/day";
import { dayInWords } from "../../words/dates";
import { completedMonths } from "../../age/months";
import { NO_DAY, type Skill } from "../../records/records";
import type { SkillFacts } from "./child-facts";

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

/** `11 months, corrected 9`: both ages in completed months, where there is little room. */
export function bothMonths(clock: AgeClock, on: Day): string {
  const months = completedMonths(clock.birth, on);
  const due = anchorOn(clock, on);
  const corrected = due === clock.birth ? "" : `, corrected ${on < due ? "below 0" : completedMonths(due, on)}`;
  return `${months} month${months === 1 ? "" : "s"}${corrected}`;
}

/** When the skill came, as far as looks can say. */
export function metInWords({ metDay, withoutDay, exact }: SkillFacts, clock: AgeClock): string {
  const on = `${dayInWords(metDay)} (${bothAges(clock, metDay)})`;
  if (exact) return `met on ${on}`;
  return withoutDay === NO_DAY
    ? `there when first looked for on ${on}`
    : `first seen on ${on}, not yet on ${dayInWords(withoutDay)}`;
}

/** At most so many, and how many more there are. */
export function someOf(lines: readonly string[], most: number): string[] {
  const more = lines.length - most;
  return more > 0 ? [...lines.slice(0, most), `And ${more} more.`] : [...lines];
}
