import { ageMonthsOn } from "../../age/correction";
import { dayInWords } from "../../words/dates";
import { replacedSkills } from "../../cohort/replaced";
import { STATE } from "../../cohort/state";
import { windowStatus } from "../../cohort/window";
import { NO_DAY, type Skill } from "../../records/records";
import { isNear } from "../../tables/caseload/near";
import { pastWindowWeight } from "../../tables/caseload/past-weight";
import { isBelowMet } from "../../tables/caseload/skill-standing";
import { windowInWords } from "../sheets/skill-words";
import { capital, listed } from "../../words/numbers";
import { type ChildFacts, type SkillFacts, skillsOf } from "./child-facts";
import { bothMonths, labelOf, MARK, metInWords } from "./page-words";

/** Where each area stands: the skill seen whose window is the latest, and what was not seen yet. No counts, no sums. */
export function areaLines(facts: ChildFacts): [area: string, text: string][] {
  return byArea(facts).map(([area, skills]) => [capital(area), areaInWords(facts, skills)]);
}

function byArea(facts: ChildFacts): [area: string, skills: SkillFacts[]][] {
  const skills = skillsOf(facts);
  const areas = [...new Set(skills.map(({ skill }) => skill.area))];
  return areas.map((area) => [area, skills.filter(({ skill }) => skill.area === area)]);
}

/** Every skill that the page names as not yet seen. */
export function namedNotYet(facts: ChildFacts): SkillFacts[] {
  return byArea(facts).flatMap(([, skills]) => notYetOf(facts, skills).slice(0, facts.room.notYetPerArea));
}

/** Skills of an area not yet seen, those that say most first. */
function notYetOf(facts: ChildFacts, skills: readonly SkillFacts[]): SkillFacts[] {
  const { context, clock, child } = facts;
  const replaced = replacedSkills(context.attainment, context.cohort.skills, child);
  return skills
    .filter(({ index, state }) => isBelowMet(state) && replaced[index] === 0)
    .filter(({ skill }) => isPast(facts, skill) || isNear(skill, ageMonthsOn(clock, context.asOf, skill.ageBasis)))
    .sort((a, b) => weight(facts, b) - weight(facts, a) || closes(a) - closes(b) || a.index - b.index);
}

function areaInWords(facts: ChildFacts, skills: readonly SkillFacts[]): string {
  if (skills.every(({ lastLook }) => lastLook === NO_DAY)) return "Not looked at by the program so far.";
  const [last] = skills.filter(({ state }) => state === STATE.met).sort((a, b) => closes(b) - closes(a));
  const seen = last ? `Seen: ${MARK.met} ${labelOf(last.skill)}, ${metInWords(last, facts.clock)}.` : null;
  return [seen, notYetInWords(facts, skills)].filter((each) => each !== null).join(" ");
}

function notYetInWords(facts: ChildFacts, skills: readonly SkillFacts[]): string | null {
  const notYet = notYetOf(facts, skills);
  if (notYet.length === 0) return null;
  const named = notYet.slice(0, facts.room.notYetPerArea).map((each) => notYetPhrase(facts, each));
  const more = notYet.length - named.length;
  return `Not yet seen at the last look: ${listed([...named, ...(more > 0 ? [`${more} more`] : [])])}.`;
}

function notYetPhrase(facts: ChildFacts, { skill, lastLook }: SkillFacts): string {
  const share = skill.expectedShare === null ? "" : ` for ${Math.round(100 * skill.expectedShare)} in 100`;
  const status = isPast(facts, skill) ? "past" : "open";
  const look = `${dayInWords(lastLook)}, at ${bothMonths(facts.clock, lastLook)}`;
  return `${MARK.notMet} ${labelOf(skill)} (${look}; window ${windowInWords(skill)}${share}, ${status})`;
}

function isPast({ clock, context }: ChildFacts, skill: Skill): boolean {
  return windowStatus(ageMonthsOn(clock, context.asOf, skill.ageBasis), skill) === "past window";
}

function weight(facts: ChildFacts, { skill }: SkillFacts): number {
  return isPast(facts, skill) ? pastWindowWeight(skill) : 0;
}

const NO_CLOSE_MONTHS = 1000;

function closes({ skill }: SkillFacts): number {
  return skill.closesMonths ?? NO_CLOSE_MONTHS;
}
