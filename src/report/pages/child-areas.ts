import type { Skill } from "../../records/records";
import { isLost } from "../../cohort/follows";
import { replacedSkills } from "../../cohort/replaced";
import { STATE } from "../../cohort/state";
import { dayInWords } from "../../words/dates";
import { ageMonthsOn } from "../../age/correction";
import { isNear } from "../../tables/caseload/near";
import { sensesOf } from "../../tables/caseload/senses";
import { isBelowMet } from "../../tables/caseload/skill-standing";
import { capital } from "../../words/numbers";
import { type ChildFacts, type SkillFacts, skillsOf } from "./child-facts";
import { labelOf, MARK, monthsInWords } from "./page-words";

/** Where one area stands, in two columns. */
export interface AreaRow {
  readonly area: string;
  readonly seen: string;
  readonly notYet: string;
}

/** What was seen, and what was looked for and is not there yet or not there any more. No counts, no sums. */
export function areaRows(facts: ChildFacts): AreaRow[] {
  const skills = skillsOf(facts);
  const areas = [...new Set(skills.map(({ skill }) => skill.area))];
  return areas.map((area) => {
    const own = skills.filter(({ skill }) => skill.area === area);
    return { area: capital(area), seen: seenInWords(facts, own), notYet: notYetInWords(facts, own) };
  });
}

/** The skills seen whose windows are the latest. */
function seenInWords({ room }: ChildFacts, skills: readonly SkillFacts[]): string {
  if (skills.every(({ state }) => state === STATE.notAssessed)) return "Not checked so far.";
  return skills
    .filter(({ state }) => state === STATE.met)
    .sort((a, b) => closes(b) - closes(a) || b.index - a.index)
    .slice(0, room.seenPerArea)
    .map(({ skill }) => `${MARK.met} ${labelOf(skill)}`)
    .join("\n");
}

function notYetInWords(facts: ChildFacts, skills: readonly SkillFacts[]): string {
  const lost = skills.filter(({ state }) => isLost(state));
  const notYet = notYetOf(facts, skills).slice(0, facts.room.notYetPerArea);
  return [
    ...lost.map(({ skill }) => `${MARK.lost} ${labelOf(skill)} (seen before)`),
    ...notYet.map((each) => `${MARK.notMet} ${labelOf(each.skill)}${pastInWords(facts, each)}`),
  ].join("\n");
}

/** Skills of an area that are not there yet at a check that still holds: those past their windows first. */
function notYetOf(facts: ChildFacts, skills: readonly SkillFacts[]): SkillFacts[] {
  const { context, clock, concerns } = facts;
  const replaced = replacedSkills(context.attainment, context.cohort.skills, facts.child);
  return skills
    .filter(({ index, state }) => isBelowMet(state) && replaced[index] === 0 && !isUncheckedSince(facts, index))
    .filter(({ skill, index }) => {
      const age = ageMonthsOn(clock, context.asOf, skill.ageBasis);
      return concerns.past.includes(index) || isNear(skill, age);
    })
    .sort((a, b) => firstOf(facts, a) - firstOf(facts, b) || closes(a) - closes(b) || a.index - b.index);
}

function isUncheckedSince({ concerns }: ChildFacts, skill: number): boolean {
  return concerns.outOfDate.includes(skill) || concerns.due.includes(skill);
}

/** Hearing and seeing, then what is past its window, then the rest. */
function firstOf({ concerns, context }: ChildFacts, { index }: SkillFacts): number {
  if (!concerns.past.includes(index)) return 2;
  return sensesOf(context.cohort.skills)[index] ? 0 : 1;
}

/** What the source of a window says of other children, where the skill is past it. */
function pastInWords({ concerns }: ChildFacts, { skill, index }: SkillFacts): string {
  if (!concerns.past.includes(index) || skill.closesMonths === null) return "";
  if (concerns.pastByStop.includes(index)) return " (only since age is counted from birth)";
  const by = monthsInWords(skill.closesMonths);
  return skill.expectedShare === null ? ` (often checked around ${by})` : ` (${childrenWho(skill)} do by ${by})`;
}

function childrenWho({ expectedShare }: Skill): string {
  if (expectedShare === null) return "many children";
  if (expectedShare >= 0.99) return "nearly all children";
  return `${expectedShare === 0.75 ? "3 in 4" : `${Math.round(100 * expectedShare)} in 100`} children or more`;
}

const MOST_UNCHECKED = 4;

/** What nobody has checked lately, said apart: it is neither seen nor "not yet". */
export function uncheckedLines(facts: ChildFacts): string[] {
  const { concerns } = facts;
  const { last } = concerns.checks;
  if (last === null) return ["The program has not checked your child yet. Please ask for a check."];
  const skills = skillsOf(facts)
    .filter(({ index }) => isUncheckedSince(facts, index))
    .sort((a, b) => firstOf(facts, a) - firstOf(facts, b) || closes(a) - closes(b) || a.index - b.index);
  const named = skills
    .slice(0, MOST_UNCHECKED)
    .map((each) => `${labelOf(each.skill)}${each.state === STATE.notAssessed ? "" : pastInWords(facts, each)}`);
  const more = skills.length - named.length;
  return [
    ...(concerns.unchecked ? [`Nothing was checked since ${dayInWords(last)}. Please ask for a check.`] : []),
    ...(named.length === 0
      ? []
      : [`Please ask for a check of: ${named.join("; ")}${more > 0 ? `; and ${more} more` : ""}.`]),
  ];
}

/** Every skill that the page names with an age. */
export function pastSkills(facts: ChildFacts): SkillFacts[] {
  return skillsOf(facts).filter(({ index }) => facts.concerns.past.includes(index));
}

const NO_CLOSE_MONTHS = 1000;

function closes({ skill }: SkillFacts): number {
  return skill.closesMonths ?? NO_CLOSE_MONTHS;
}
