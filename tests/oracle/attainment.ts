/** When a skill was met, and what is true of it at a date. METHOD.md, sections 4, 5 and 9. */
import { daysBetween } from "./calendar";
import type { Person } from "./following";
import type { OracleInput, Result, SkillRow } from "./input";

/** All that was seen of one skill on one day: different results count as not met, or as met by the setting. */
export interface Look {
  readonly date: string;
  readonly result: Result;
}

/** The days between which the skill was met: after the one, by the other. */
export interface Attainment {
  readonly after: string;
  readonly by: string;
  readonly hadAtFirstLook: boolean;
}

export type State = "met" | "emerging" | "not met" | "lost" | "lost to confirm" | "not assessed";
export type Box = "had at first look" | "gained here" | "not met" | "out of date" | "lost" | "not assessed";
export const BOXES: readonly Box[] = [
  "had at first look",
  "gained here",
  "not met",
  "out of date",
  "lost",
  "not assessed",
];

/** The looks at one skill of one child up to a day, oldest first. */
export function looksOf(person: Person, skill: string, upTo: string): Look[] {
  const resultsOn = new Map<string, Set<Result>>();
  for (const row of person.observations) {
    if (row.skill !== skill || row.date > upTo) continue;
    resultsOn.set(row.date, (resultsOn.get(row.date) ?? new Set()).add(row.result));
  }
  const looks: Look[] = [];
  for (const date of [...resultsOn.keys()].sort()) {
    const [first = "not met", ...others] = resultsOn.get(date) ?? [];
    const isMet = person.disagreement === "met" && resultsOn.get(date)?.has("met") === true;
    looks.push({ date, result: others.length > 0 ? (isMet ? "met" : "not met") : first });
  }
  return looks;
}

/** The first look that proves that the skill was there (met, or lost), and the last look before it. */
export function attainmentOf(looks: readonly Look[], birth: string): Attainment | null {
  let without: string | null = null;
  for (const look of looks) {
    if (look.result === "met" || look.result === "lost") {
      return { after: without ?? birth, by: look.date, hadAtFirstLook: without === null };
    }
    without = look.date;
  }
  return null;
}

export function stateAt(input: OracleInput, person: Person, skill: SkillRow, day: string): State {
  const looks = looksOf(person, skill.skill, day);
  const last = looks[looks.length - 1];
  if (last === undefined) return "not assessed";
  if (last.result === "met") return "met";
  if (attainmentOf(looks, person.birth) === null) return last.result;
  if (isReplaced(input, person, skill, day)) return "met";
  return last.result === "lost" ? "lost" : "lost to confirm";
}

function isReplaced(input: OracleInput, person: Person, skill: SkillRow, day: string): boolean {
  return input.skills.some((later) => later.follows === skill.skill && stateAt(input, person, later, day) === "met");
}

export function boxAt(input: OracleInput, person: Person, skill: SkillRow, day: string): Box {
  const state = stateAt(input, person, skill, day);
  if (state === "not assessed") return "not assessed";
  if (state === "lost" || state === "lost to confirm") return "lost";
  const looks = looksOf(person, skill.skill, day);
  const attainment = attainmentOf(looks, person.birth);
  if (state === "met") return attainment?.hadAtFirstLook ? "had at first look" : "gained here";
  const lastLook = looks[looks.length - 1]?.date ?? day;
  return daysBetween(lastLook, day) > input.settings.recheckDays ? "out of date" : "not met";
}
