import { ageMonthsOn } from "../../age/correction";
import { replacedSkills } from "../../cohort/replaced";
import { STATE } from "../../cohort/state";
import { windowStatus } from "../../cohort/window";
import { isNear } from "../../tables/caseload/near";
import { isBelowMet } from "../../tables/caseload/skill-standing";
import { type ChildFacts, type SkillFacts, skillsOf } from "./child-facts";
import { labelOf } from "./page-words";

const MOST_OF_AN_AREA = 2;

/** What to try together, in the program's own words, for skills whose window is open; the window that closes first comes first. */
export function tryLines(facts: ChildFacts): string[] {
  const ideas = openSkills(facts).map(({ skill }) => `${labelOf(skill)}: ${skill.tryTogether}`);
  if (ideas.length === 0) return ["The program's list has no idea for now. Whatever you both enjoy is a good one."];
  return ["For what may come next. Play, not practice; leave out what is no fun.", ...ideas];
}

export function openSkills(facts: ChildFacts): SkillFacts[] {
  const { context, clock, child } = facts;
  const replaced = replacedSkills(context.attainment, context.cohort.skills, child);
  const open = skillsOf(facts)
    .filter(({ index, state }) => (isBelowMet(state) || state === STATE.notAssessed) && replaced[index] === 0)
    .filter(({ skill }) => {
      const age = ageMonthsOn(clock, context.asOf, skill.ageBasis);
      return skill.tryTogether !== "" && windowStatus(age, skill) === "in window" && isNear(skill, age);
    })
    .sort((a, b) => (a.skill.closesMonths ?? 1e6) - (b.skill.closesMonths ?? 1e6) || a.index - b.index);
  return fewOfEachArea(open).slice(0, facts.room.ideas);
}

function fewOfEachArea(skills: readonly SkillFacts[]): SkillFacts[] {
  const taken = new Map<string, number>();
  return skills.filter(({ skill }) => {
    const count = (taken.get(skill.area) ?? 0) + 1;
    taken.set(skill.area, count);
    return count <= MOST_OF_AN_AREA;
  });
}
