import { ageMonthsOn } from "../../age/correction";
import { replacedSkills } from "../../cohort/replaced";
import { STATE } from "../../cohort/state";
import { ROUTINE_VISIT_MONTHS } from "../../cohort/visits";
import type { Skill } from "../../records/records";
import { isBelowMet } from "../../tables/caseload/skill-standing";
import { type ChildFacts, type SkillFacts, skillsOf } from "./child-facts";
import { isBeforeDueDate } from "./page-words";

const MOST_OF_AN_AREA = 2;
/** How long before a published opening a family may start to play towards it. */
const MONTHS_AHEAD = 2;

/** What to try together, in the program's own words. */
export function tryLines(facts: ChildFacts): string[] {
  if (isBeforeDueDate(facts)) {
    return [
      "Your baby is not yet at the due date. Hold, talk and rest together. Ask your clinician what is right now.",
    ];
  }
  const ideas = nextSkills(facts).map(({ skill }) => `– ${skill.tryTogether}`);
  if (ideas.length === 0)
    return [
      mayHaveLost(facts) ? ASK_FIRST : "The program's list has no idea for now. What you both enjoy is a good one.",
    ];
  return [
    "Stay with your child. Stop when it is not fun anymore. Leave out what your clinician or therapist told you not to do.",
    ...ideas,
  ];
}

/** A skill that was there is not the program's to bring back: nothing is tried past it either. */
const ASK_FIRST = "A skill may be lost. Ask your child's clinician what to try now.";

function mayHaveLost({ concerns }: ChildFacts): boolean {
  return concerns.lost.length + concerns.toConfirm.length > 0;
}

/**
 * From each area the next one or two skills to play towards: not there yet, the step before them there, and the age for them
 * reached. Those past their windows come first: there help is wanted most.
 */
export function nextSkills(facts: ChildFacts): SkillFacts[] {
  if (isBeforeDueDate(facts)) return [];
  const { concerns, room } = facts;
  const isPast = ({ index }: SkillFacts) => concerns.past.includes(index) || concerns.due.includes(index);
  const open = skillsOf(facts)
    .filter(({ skill }) => skill.tryTogether !== "")
    .filter((each) => isStepReached(facts, each) && isAgeReached(facts, each))
    .sort((a, b) => Number(isPast(b)) - Number(isPast(a)) || closes(a) - closes(b) || a.index - b.index);
  return inTurns(open).slice(0, room.ideas);
}

/** Never a skill past an unmet step: nobody is told to play chase with a child who does not stand. */
function isStepReached({ context, child }: ChildFacts, { skill, index, state }: SkillFacts): boolean {
  const { attainment, cohort } = context;
  const replaced = replacedSkills(attainment, cohort.skills, child);
  if (replaced[index] === 1 || !(isBelowMet(state) || state === STATE.notAssessed)) return false;
  const { follows } = skill;
  if (follows === null) return true;
  return replaced[follows] === 1 || attainment.state[child * attainment.skillCount + follows] === STATE.met;
}

/** A skill that nobody checked is tried while its window is open; one that was looked for and not seen also when it is past. */
function isAgeReached({ context, clock }: ChildFacts, { skill, state }: SkillFacts): boolean {
  const age = ageMonthsOn(clock, context.asOf, skill.ageBasis);
  if (age < 0 || age < fromMonths(skill)) return false;
  return isBelowMet(state) || skill.closesMonths === null || age < skill.closesMonths;
}

/** Where no opening is published, the age of the routine visit before the close. */
function fromMonths({ opensMonths, closesMonths }: Skill): number {
  if (opensMonths !== null) return opensMonths - MONTHS_AHEAD;
  return ROUTINE_VISIT_MONTHS.findLast((months) => closesMonths !== null && months < closesMonths) ?? 0;
}

/** The next one of each area, then the second of each. */
function inTurns(skills: readonly SkillFacts[]): SkillFacts[] {
  const byArea = new Map<string, SkillFacts[]>();
  for (const each of skills) byArea.set(each.skill.area, [...(byArea.get(each.skill.area) ?? []), each]);
  const areas = [...byArea.values()];
  return Array.from({ length: MOST_OF_AN_AREA }, (_, turn) => areas.flatMap((own) => own[turn] ?? [])).flat();
}

function closes({ skill }: SkillFacts): number {
  return skill.closesMonths ?? 1e6;
}
