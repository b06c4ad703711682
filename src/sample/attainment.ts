import { type AgeClock, anchorOn } from "../age/correction";
import type { Day } from "../age/day";
import { DAYS_PER_MEAN_MONTH } from "../age/months";
import { type Chance, chanceOf } from "./chance";
import { NEVER_CRAWLED_SHARE } from "./program";
import { type SampleArea, type SampleSkill, SKILLS } from "./skills";

/** The day of a skill that a child never comes to do. */
export const NEVER = 2_147_483_647;

/** Weights of what a child's skills, and the skills of one area, have in common; their squares and the rest's sum to 1. */
const CHILD_WEIGHT = 0.5;
const AREA_WEIGHT = 0.6;
const SKILL_WEIGHT = Math.sqrt(1 - CHILD_WEIGHT * CHILD_WEIGHT - AREA_WEIGHT * AREA_WEIGHT);
const EARLIEST_MONTHS = 0.2;

/** True days on which each child came to do each skill: one row a child, one entry a skill of `SKILLS`. */
export function drawAttainment(clocks: readonly AgeClock[], seed: number): Int32Array[] {
  const chance = chanceOf(seed, 2);
  return clocks.map((clock) => drawChild(chance, clock));
}

function drawChild(chance: Chance, clock: AgeClock): Int32Array {
  const ofChild = chance.deviate();
  const ofArea = new Map<SampleArea, number>();
  const crawls = !chance.yes(NEVER_CRAWLED_SHARE);
  return Int32Array.from(SKILLS, (skill) => {
    const area = ofArea.get(skill.area) ?? chance.deviate();
    ofArea.set(skill.area, area);
    const deviate = CHILD_WEIGHT * ofChild + AREA_WEIGHT * area + SKILL_WEIGHT * chance.deviate();
    return skill.id === "crawl" && !crawls ? NEVER : attainedOn(clock, skill, deviate);
  });
}

/** The first day on which the age by the rule in force that day has come to the drawn age. */
function attainedOn(clock: AgeClock, skill: SampleSkill, deviate: number): Day {
  const days = Math.round(ageMonthsAt(skill, deviate) * DAYS_PER_MEAN_MONTH);
  if (skill.ageBasis === "chronological") return clock.birth + days;
  const corrected = clock.correctedBirth + days;
  return anchorOn(clock, corrected) === clock.birth ? Math.max(clock.stops, clock.birth + days) : corrected;
}

function ageMonthsAt({ ages }: SampleSkill, deviate: number): number {
  const width = deviate < 0 ? ages.widthBelowMonths : ages.widthAboveMonths;
  return Math.max(EARLIEST_MONTHS, ages.middleMonths + deviate * width);
}
