import { type AgeBasis, ageDaysOn } from "../age/correction";
import type { Day } from "../age/day";
import { DAYS_PER_MEAN_MONTH } from "../age/months";
import type { Chance } from "./chance";
import type { SampleChild } from "./children";
import { isLost, type TrueLoss } from "./losses";
import { type SampleSkill, SKILLS } from "./skills";
import type { Visit } from "./visits";

/** What the records of one child hold so far. */
export interface WhatIsKnown {
  /** 1 where the skill has been seen. */
  readonly met: Uint8Array;
}

const MOST_LOOKS = 14;
const CHANCE_WHEN_LOST = 0.8;

/** The skill that takes the place of each skill, by index; -1 for none. */
export const REPLACED_BY = SKILLS.map((skill) => SKILLS.findIndex((each) => each.follows === skill.id));

/** The skills that a therapist looks at on one visit: those near the child's age that have not been seen, and a few again. */
export function chooseLooks(
  chance: Chance,
  child: SampleChild,
  visit: Visit,
  losses: readonly TrueLoss[],
  known: WhatIsKnown,
): number[] {
  const ages = SKILLS.map(({ ageBasis }) => ageMonths(child, visit.day, ageBasis === "" ? "corrected" : ageBasis));
  const chosen = SKILLS.flatMap((skill, index) => {
    const usual = chanceOfLook(skill, ages[index] as number, known.met, index, visit.intake);
    return chance.yes(isLost(losses, index, visit.day) ? CHANCE_WHEN_LOST : usual) ? [index] : [];
  });
  return chosen.length <= MOST_LOOKS ? chosen : nearestToAge(chosen, ages);
}

function ageMonths(child: SampleChild, on: Day, basis: AgeBasis): number {
  return ageDaysOn(child.clock, on, basis) / DAYS_PER_MEAN_MONTH;
}

function chanceOfLook(skill: SampleSkill, months: number, met: Uint8Array, index: number, intake: boolean): number {
  const { middleMonths, widthBelowMonths, widthAboveMonths } = skill.ages;
  if (months < middleMonths - 2.6 * widthBelowMonths - 0.5) return 0;
  const recent = months < middleMonths + 3 * widthAboveMonths + 1;
  if (met[index] === 1) return recent ? 0.06 : 0.006;
  if (met[REPLACED_BY[index] as number] === 1) return 0.03;
  if (recent) return intake ? 0.9 : 0.72;
  return intake ? 0.5 : 0.25;
}

/** Where there is no time for all, those usual at this age go first: what the child can do plays no part in the choice. */
function nearestToAge(chosen: readonly number[], ages: readonly number[]): number[] {
  const away = (skill: number): number =>
    Math.abs((ages[skill] as number) - (SKILLS[skill] as SampleSkill).ages.middleMonths);
  const kept = [...chosen].sort((a, b) => away(a) - away(b) || a - b).slice(0, MOST_LOOKS);
  return kept.sort((a, b) => a - b);
}
