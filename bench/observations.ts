import { type AgeClock, ageClock, type CorrectionRule } from "../src/age/correction";
import { dayOf } from "../src/age/day";
import type { Cohort } from "../src/cohort/cohort";
import { Following } from "../src/cohort/following";
import { sortLooks } from "../src/cohort/looks";
import { type Enrolments, NO_DAY, type Observations, RESULT, type Skill } from "../src/records/records";
import { type Random, randomFrom } from "../src/statistics/random";

export const SKILL_COUNT = 30;
/** Thirteen bands. */
export const EDGES: readonly number[] = [0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 30, 36];
export const RULE: CorrectionRule = { belowDays: 259, untilMonths: 24, untilAge: "chronological" };

const ROWS_PER_CHILD = 100;
const VISITS = 10;
const LOOKS_PER_VISIT = 10;
const FIRST_BIRTH = dayOf(2020, 1, 1);
const LAST_BIRTH = dayOf(2023, 12, 31);
/** A whole number of days a visit, so that no two visits of a child fall on one day. */
const DAYS_APART = 112;

/** Invented children and what was seen of them, in no order. */
export interface Invented {
  readonly observations: Observations;
  readonly birth: Int32Array;
  /** 0: not recorded. */
  readonly gestationDays: Int16Array;
}

/** Ten visits a child, each a look at ten different skills; one child in eight born early. The same for a seed, always. */
export function inventedObservations(rowCount: number, seed = 20240229): Invented {
  const random = randomFrom(seed);
  const childCount = Math.ceil(rowCount / ROWS_PER_CHILD);
  const birth = Int32Array.from({ length: childCount }, () => between(random, FIRST_BIRTH, LAST_BIRTH));
  const gestationDays = Int16Array.from({ length: childCount }, () =>
    random.nextInt(8) === 0 ? between(random, 168, 258) : random.nextInt(3) * 140,
  );
  const observations = blank(rowCount);
  const places = shuffled(rowCount, random);
  for (let row = 0, child = 0; row < rowCount; child += 1) {
    for (let visit = 0; visit < VISITS; visit += 1)
      row = addVisit(observations, places, row, child, visit, birth, random);
  }
  return { observations, birth, gestationDays };
}

/** The clocks of all children: part of the job, since ages are. */
export function clocksOf({ birth, gestationDays }: Invented): AgeClock[] {
  return Array.from(birth, (day, child) =>
    ageClock(day, gestationDays[child] === 0 ? null : gestationDays[child]!, RULE),
  );
}

export const SKILLS: readonly Skill[] = Array.from({ length: SKILL_COUNT }, (_, index) => ({
  id: `S${index + 1}`,
  label: `Skill ${index + 1}`,
  area: "speech",
  opensMonths: null,
  closesMonths: null,
  ageBasis: "corrected",
  expectedShare: null,
  follows: null,
  tryTogether: "",
  sense: null,
  basis: "",
}));

/** From columns in the order of the sheet, so that sorting counts as part of the job. */
export function cohortFrom(invented: Invented, ids: readonly string[]): Cohort {
  return {
    ids,
    clocks: clocksOf(invented),
    skills: SKILLS,
    looks: sortLooks(invented.observations, invented.birth.length),
    observers: [],
    enrolments: NO_ENROLMENTS,
    following: NOBODY_FOLLOWED,
    disagreementIsMet: false,
  };
}

export function idsOf(invented: Invented): string[] {
  return Array.from(invented.birth, (_, child) => `C${child + 1}`);
}

const NO_ENROLMENTS: Enrolments = {
  child: new Int32Array(0),
  enrolled: new Int32Array(0),
  left: new Int32Array(0),
  columns: [],
};
const NOBODY_FOLLOWED = new Following(NO_ENROLMENTS, 0);

function addVisit(
  to: Observations,
  places: Uint32Array,
  from: number,
  child: number,
  visit: number,
  birth: Int32Array,
  random: Random,
): number {
  const ageDays = DAYS_APART * visit + random.nextInt(DAYS_APART);
  const firstSkill = random.nextInt(SKILL_COUNT);
  let row = from;
  for (let look = 0; look < LOOKS_PER_VISIT && row < places.length; look += 1, row += 1) {
    const place = places[row]!;
    const skill = (firstSkill + look * 7) % SKILL_COUNT;
    to.child[place] = child;
    to.skill[place] = skill;
    to.day[place] = birth[child]! + ageDays;
    to.result[place] = resultAt(ageDays, skill, random);
  }
  return row;
}

function resultAt(ageDays: number, skill: number, random: Random): number {
  const usual = ((skill + 1) * 900) / SKILL_COUNT;
  const shift = ageDays - usual + (random.nextUnit() - 0.5) * 240;
  if (shift >= 0) return random.nextInt(50) === 0 ? RESULT.lost : RESULT.met;
  return shift > -60 ? RESULT.emerging : RESULT.notMet;
}

function shuffled(count: number, random: Random): Uint32Array {
  const places = Uint32Array.from({ length: count }, (_, at) => at);
  for (let at = count - 1; at > 0; at -= 1) {
    const other = Math.floor(random.nextUnit() * (at + 1));
    const kept = places[at]!;
    places[at] = places[other]!;
    places[other] = kept;
  }
  return places;
}

function between(random: Random, from: number, to: number): number {
  return from + random.nextInt(to - from + 1);
}

function blank(rowCount: number): Observations {
  return {
    child: new Int32Array(rowCount),
    skill: new Uint16Array(rowCount),
    day: new Int32Array(rowCount),
    result: new Uint8Array(rowCount),
    exact: new Uint8Array(rowCount),
    observer: new Int32Array(rowCount).fill(-1),
    observers: [],
    entered: new Int32Array(0),
    lastEntered: NO_DAY,
  };
}
