import { ageInWords, correctedAgeInWords } from "../../age/age-in-words";
import type { AgeClock } from "../../age/correction";
import type { Day } from "../../age/day";
import { dayInWords } from "../../age/day-in-words";
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
