import { dayInWords } from "../../words/dates";
import { STATE } from "../../cohort/state";
import { NO_DAY } from "../../records/records";
import { type ChildFacts, type SkillFacts, skillsOf } from "./child-facts";
import { labelOf, MARK } from "./page-words";

/**
 * Skills first seen after the last routine visit and still there: first those that an earlier check did not see, then the
 * newest, and of one day the latest window.
 */
export function newSkills(facts: ChildFacts): SkillFacts[] {
  const since = facts.before?.day ?? facts.clock.birth - 1;
  return skillsOf(facts)
    .filter(({ state, metDay }) => state === STATE.met && metDay > since)
    .sort(
      (a, b) =>
        Number(wasNotYet(b)) - Number(wasNotYet(a)) ||
        b.metDay - a.metDay ||
        closes(b) - closes(a) ||
        a.index - b.index,
    );
}

export function newLines(facts: ChildFacts): string[] {
  const { before, room } = facts;
  const since = before === null ? "Since birth" : `Since ${dayInWords(before.day)}`;
  const all = newSkills(facts);
  if (all.length === 0) return [`${since}, the program noted nothing new. What you saw at home counts: tell us.`];
  const told = all.slice(0, room.newSkills);
  const more = all.length - told.length;
  return [
    ...line(`${since}, your child came to do:`, told.filter(wasNotYet)),
    ...line(
      "Seen at the first check:",
      told.filter((each) => !wasNotYet(each)),
    ),
    ...(more > 0 ? [`And ${more} more.`] : []),
  ];
}

function line(head: string, skills: readonly SkillFacts[]): string[] {
  return skills.length === 0 ? [] : [head, ...skills.map(({ skill }) => `${MARK.met} ${labelOf(skill)}`)];
}

function wasNotYet({ withoutDay }: SkillFacts): boolean {
  return withoutDay !== NO_DAY;
}

function closes({ skill }: SkillFacts): number {
  return skill.closesMonths ?? 0;
}
