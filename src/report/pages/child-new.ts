import { dayInWords } from "../../words/dates";
import { STATE } from "../../cohort/state";
import { type ChildFacts, type SkillFacts, skillsOf } from "./child-facts";
import { labelOf, MARK, metInWords, someOf } from "./page-words";

/** Skills first seen after the last routine visit and still there, the newest first, and of one day the latest window. */
export function newSkills(facts: ChildFacts): SkillFacts[] {
  const since = facts.before?.day ?? facts.clock.birth - 1;
  return skillsOf(facts)
    .filter(({ state, metDay }) => state === STATE.met && metDay > since)
    .sort((a, b) => b.metDay - a.metDay || closes(b) - closes(a) || a.index - b.index);
}

export function newLines(facts: ChildFacts): string[] {
  const { before, clock } = facts;
  const since =
    before === null ? "Since birth" : `Since the ${before.months}-month visit was due (${dayInWords(before.day)})`;
  const lines = newSkills(facts).map((each) => `${MARK.met} ${labelOf(each.skill)}: ${metInWords(each, clock)}.`);
  if (lines.length === 0) {
    return [`${since}, the program has noted nothing for the first time. What you have seen at home counts: tell it.`];
  }
  return [`${since}, seen for the first time:`, ...someOf(lines, facts.room.newSkills)];
}

function closes({ skill }: SkillFacts): number {
  return skill.closesMonths ?? 0;
}
