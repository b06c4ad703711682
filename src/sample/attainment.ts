import { type AgeClock, anchorOn } from "../age/correction";
import type { Day } from "../age/day";
import { DAYS_PER_MEAN_MONTH } from "../age/months";
import { type Chance, chanceOf } from "./chance";
import { NEVER_CRAWLED_SHARE } from "./program";
import { IN_ORDER, type SampleArea, type SampleSkill, SKILLS, skillIndex, STEPS_BEFORE } from "./skills";

/** The day of a skill that a child never comes to do. */
export const NEVER = 2_147_483_647;

/** Weights of what a child's skills, those of one area and those of one chain have in common; all squares sum to 1. */
const CHILD_WEIGHT = 0.5;
const AREA_WEIGHT = 0.6;
const CHAIN_WEIGHT = 0.54;
const SKILL_WEIGHT = Math.sqrt(1 - CHILD_WEIGHT ** 2 - AREA_WEIGHT ** 2 - CHAIN_WEIGHT ** 2);
const EARLIEST_MONTHS = 0.2;
/** Days that a skill comes after one that leads to it, at least. */
const DAYS_BETWEEN_STEPS = 6;

/** Children to whom everything comes late, and by how many widths of the curves. Invented. */
const SHARE_LATE = 0.06;
const LATE_BY = 1.8;

/** The skill that a chain begins with. Walking shares the chain of standing, not that of crawling. */
const CHAIN = SKILLS.map((_, skill) => chainOf(skill));

/** 1 for each child to whom everything comes late. */
export function drawLate(count: number, seed: number): Uint8Array {
  const chance = chanceOf(seed, 10);
  return Uint8Array.from({ length: count }, () => (chance.yes(SHARE_LATE) ? 1 : 0));
}

/** True days on which each child came to do each skill: one row per child, one entry per skill of `SKILLS`. */
export function drawAttainment(clocks: readonly AgeClock[], late: Uint8Array, seed: number): Int32Array[] {
  const chance = chanceOf(seed, 2);
  return clocks.map((clock, child) => drawChild(chance, clock, late[child] === 1 ? LATE_BY : 0));
}

function drawChild(chance: Chance, clock: AgeClock, lateBy: number): Int32Array {
  const ofChild = chance.deviate();
  const ofArea = new Map<SampleArea, number>();
  const ofChain = new Map<number, number>();
  const crawls = !chance.yes(NEVER_CRAWLED_SHARE);
  const days = new Int32Array(SKILLS.length);
  for (const index of IN_ORDER) {
    const skill = SKILLS[index] as SampleSkill;
    const area = drawnOnce(chance, ofArea, skill.area);
    const chain = drawnOnce(chance, ofChain, CHAIN[index] as number);
    const own = chance.deviate();
    const deviate = CHILD_WEIGHT * ofChild + AREA_WEIGHT * area + CHAIN_WEIGHT * chain + SKILL_WEIGHT * own;
    const drawn = attainedOn(clock, skill, deviate + lateBy);
    days[index] = skill.id === "crawl" && !crawls ? NEVER : Math.max(drawn, earliest(days, index));
  }
  return days;
}

function drawnOnce<Key>(chance: Chance, drawn: Map<Key, number>, key: Key): number {
  const deviate = drawn.get(key) ?? chance.deviate();
  drawn.set(key, deviate);
  return deviate;
}

/** Nobody walks before standing; a child who never crawls may. */
function earliest(days: Int32Array, skill: number): Day {
  const before = (STEPS_BEFORE[skill] as readonly number[])
    .map((each) => days[each] as Day)
    .filter((day) => day !== NEVER);
  return before.reduce((latest, day) => Math.max(latest, day + DAYS_BETWEEN_STEPS), -NEVER);
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

function chainOf(skill: number): number {
  const { follows, after } = SKILLS[skill] as SampleSkill;
  const before = after[0] ?? follows;
  return before === "" ? skill : chainOf(skillIndex(before));
}
