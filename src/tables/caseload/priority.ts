import type { Skill } from "../../records/records";
import type { TableContext } from "../context";
import type { Concerns, Priority, Urgency } from "./concerns";
import { sensesOf } from "./senses";
import { ageOverClose } from "./skill-standing";

/** What each priority stands for (METHOD.md, section 6). */
export const PRIORITY_WORDS: Readonly<Record<Priority, string>> = {
  1: "A loss, or a sign without follow-up",
  2: "Past the window: talk now",
  3: "One skill past its window, or observers who disagree",
  4: "Not known: check now",
  5: "Something due or opening",
  6: "Nothing noted at the last check",
};

/** A skill this far past its close at its last check stands for itself: a quarter of its closing age. */
const FAR_PAST = 1.25;
/** The share of a window that all but one child in a hundred keep, as the WHO study gives it. */
const NEARLY_ALL = 0.99;

type Facts = Omit<Concerns, "priority" | "urgency">;

/**
 * Which of the six groups a child stands in. One missed skill is never "nothing": the CDC/AAP ages were chosen so that it
 * leads to a talk and to screening rather than to waiting. Source: Zubler et al., Pediatrics 2022;149(3):e2021052138. The
 * groups themselves are our choice.
 */
export function priorityOf(context: TableContext, facts: Facts): Priority {
  if (facts.lost.length + facts.toConfirm.length + facts.openSigns.length > 0) return 1;
  if (isPastInEarnest(context, facts)) return 2;
  if (facts.past.length + facts.disagreed.length > 0) return 3;
  if (facts.unchecked || facts.due.length > 0) return 4;
  return isSomethingDue(facts) ? 5 : 6;
}

/** Two or more, or one that alone says much: of 99 in 100, of hearing or seeing, or far past. */
function isPastInEarnest(context: TableContext, { child, past, pastByStop }: Facts): boolean {
  const senses = sensesOf(context.cohort.skills);
  const counted = past.filter((skill) => !pastByStop.includes(skill));
  return counted.length >= 2 || counted.some((skill) => senses[skill] || isPastAlone(context, child, skill));
}

function isPastAlone(context: TableContext, child: number, skill: number): boolean {
  const { expectedShare } = context.cohort.skills[skill] as Skill;
  const isOfNearlyAll = expectedShare !== null && expectedShare >= NEARLY_ALL;
  return isOfNearlyAll || ageOverClose(context, child, skill) >= FAR_PAST;
}

function isSomethingDue(facts: Facts): boolean {
  const dated = [facts.correctionStops, facts.visit, facts.transition];
  return facts.opening.length + facts.outOfDate.length > 0 || dated.some((each) => each !== null);
}

/** What puts one child of a group before another. */
export function urgencyOf(context: TableContext, facts: Omit<Facts, "ofSenses">): Urgency & { ofSenses: number[] } {
  const { skills } = context.cohort;
  const senses = sensesOf(skills);
  const missing = [...facts.lost, ...facts.toConfirm, ...facts.past, ...facts.due];
  const ofSenses = missing.filter((skill) => senses[skill]);
  return {
    ofSenses,
    senses: ofSenses.length > 0,
    areas: new Set(missing.map((skill) => skills[skill]?.area)).size,
    skills: missing.length,
    ageOverClose: Math.max(0, ...missing.map((skill) => ageOverClose(context, facts.child, skill))),
  };
}

/** Negative where `a` comes before `b`: the group, then what orders within it. */
export function byUrgency(
  a: Pick<Concerns, "priority" | "urgency">,
  b: Pick<Concerns, "priority" | "urgency">,
): number {
  const [first, second] = [a.urgency, b.urgency];
  return (
    a.priority - b.priority ||
    Number(second.senses) - Number(first.senses) ||
    second.areas - first.areas ||
    second.skills - first.skills ||
    second.ageOverClose - first.ageOverClose
  );
}
