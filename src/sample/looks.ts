import { type AgeBasis, ageDaysOn } from "../age/correction";
import type { Day } from "../age/day";
import { DAYS_PER_MEAN_MONTH } from "../age/months";
import type { Chance } from "./chance";
import type { SampleChild } from "./children";
import { isLost, type TrueLoss } from "./losses";
import { type SampleSkill, SKILLS, skillIndex } from "./skills";
import type { Visit } from "./visits";

/** What the records of one child hold so far. */
export interface WhatIsKnown {
  /** 1 where the skill has been seen. */
  readonly met: Uint8Array;
  /** 1 where it was looked for and, at the last look, not seen. */
  readonly waiting: Uint8Array;
  /** The day on which everything near the child's age was last looked for. */
  reviewed: Day | null;
}

/** Looks that a review, and any other visit, has time for. */
const MOST_LOOKS = { review: 24, other: 8 } as const;
/** Every second or third visit goes through everything near the child's age. */
const DAYS_BETWEEN_REVIEWS = 54;
const CHANCE_WHEN_LOST = 0.9;

/** Who walks need not crawl: nobody waits for it then. */
const CRAWL = skillIndex("crawl");

/** The skills that follow each skill, by index. */
const FOLLOWERS = SKILLS.map((skill) => SKILLS.flatMap((each, index) => (each.follows === skill.id ? [index] : [])));
/** The skill that each skill follows, by index; -1 for none. */
const FOLLOWED = SKILLS.map(({ follows }) => (follows === "" ? -1 : skillIndex(follows)));

/** The skills that a therapist looks at on one visit: on a review all that are near, else those that are being waited for. */
export function chooseLooks(
  chance: Chance,
  child: SampleChild,
  visit: Visit,
  losses: readonly TrueLoss[],
  known: WhatIsKnown,
): number[] {
  const review = known.reviewed === null || visit.day - known.reviewed >= DAYS_BETWEEN_REVIEWS;
  if (review) known.reviewed = visit.day;
  const ages = SKILLS.map(({ ageBasis }) => ageMonths(child, visit.day, ageBasis === "" ? "corrected" : ageBasis));
  const chosen = SKILLS.flatMap((_, index) => {
    const usual = review
      ? chanceInReview(index, ages[index] as number, known, visit.intake)
      : chanceBetweenReviews(index, ages[index] as number, known);
    return chance.yes(isLost(losses, index, visit.day) ? CHANCE_WHEN_LOST : usual) ? [index] : [];
  });
  const most = review ? MOST_LOOKS.review : MOST_LOOKS.other;
  return chosen.length <= most
    ? chosen
    : mostUrgent(chosen, ages, known)
        .slice(0, most)
        .sort((a, b) => a - b);
}

/** True where a skill that follows this one, or one that follows that, has been seen. */
export function isReplaced(met: Uint8Array, skill: number): boolean {
  return (FOLLOWERS[skill] as number[]).some((later) => met[later] === 1 || isReplaced(met, later));
}

function ageMonths(child: SampleChild, on: Day, basis: AgeBasis): number {
  return ageDaysOn(child.clock, on, basis) / DAYS_PER_MEAN_MONTH;
}

function chanceInReview(skill: number, months: number, known: WhatIsKnown, intake: boolean): number {
  const { ages, sense } = SKILLS[skill] as SampleSkill;
  if (isTooEarly(ages, months)) return 0;
  const before = FOLLOWED[skill] as number;
  const stepMissing = before >= 0 && known.waiting[before] === 1 && months < ages.middleMonths;
  if (isReplaced(known.met, skill)) return known.waiting[skill] === 1 && skill !== CRAWL ? 0.97 : 0.02;
  if (known.waiting[skill] === 1) return stepMissing ? 0.4 : 0.97;
  if (known.met[skill] === 1) return months < ages.middleMonths + 3 * ages.widthAboveMonths + 1 ? 0.04 : 0;
  if (stepMissing) return 0.4;
  if (intake && sense !== "") return 1;
  if (!intake) return 0.95;
  return months < ages.middleMonths + 4 * ages.widthAboveMonths + 2 ? 0.97 : 0.12;
}

/** Between reviews: what was not there last time, and now and then the next step of a chain. */
function chanceBetweenReviews(skill: number, months: number, known: WhatIsKnown): number {
  const { ages } = SKILLS[skill] as SampleSkill;
  if (isTooEarly(ages, months) || isReplaced(known.met, skill)) return 0;
  if (known.waiting[skill] === 1) return isPast(skill, months) ? 0.85 : months >= ages.middleMonths ? 0.65 : 0.35;
  if (known.met[skill] === 1) return 0;
  const before = FOLLOWED[skill] as number;
  return before >= 0 && known.met[before] === 1 ? 0.2 : 0.05;
}

function isPast(skill: number, months: number): boolean {
  const { closesMonths } = SKILLS[skill] as SampleSkill;
  return closesMonths !== null && months >= closesMonths;
}

function isTooEarly(ages: SampleSkill["ages"], months: number): boolean {
  return months < ages.middleMonths - 1.8 * ages.widthBelowMonths - 0.2;
}

/**
 * Where there is no time for all: hearing, seeing and what is past its window, then what is usual at this age. What the child
 * can do today plays no part.
 */
function mostUrgent(chosen: readonly number[], ages: readonly number[], { waiting }: WhatIsKnown): number[] {
  const away = (skill: number): number => {
    const { sense, ages: usual } = SKILLS[skill] as SampleSkill;
    const months = ages[skill] as number;
    return sense !== "" || (waiting[skill] === 1 && isPast(skill, months)) ? -1 : Math.abs(months - usual.middleMonths);
  };
  return [...chosen].sort((a, b) => away(a) - away(b) || a - b);
}
