import type { Day } from "../../age/day";
import { dayInWords } from "../../words/dates";
import type { AgeClock } from "../../age/correction";
import type { Transition } from "../../cohort/transition";
import type { RoutineVisit } from "../../cohort/visits";
import type { Skill } from "../../records/records";
import type { TableContext } from "../context";
import { listed } from "../../words/numbers";
import type { Concerns } from "./concerns";
import { areSeveral } from "./past-weight";

/** Everything that stands out about one child, in words. */
export function reasonInWords(context: TableContext, concerns: Concerns): string {
  return reasonsInWords(context, concerns).join(" ");
}

/** The same as sentences, the most urgent first. */
export function reasonsInWords(context: TableContext, concerns: Concerns): string[] {
  const reasons = [
    ...losses(context, concerns),
    ...signs(concerns),
    ...past(context, concerns),
    ...looksToRepeat(context, concerns),
    ...due(context, concerns),
  ];
  return reasons.length === 0 ? ["Nothing stands out in the records, and nothing is due."] : reasons;
}

/** The most skills that a line names. */
const MOST_NAMED = 3;

function losses(context: TableContext, { child, lost, toConfirm }: Concerns): string[] {
  const on = (skill: number) => dayInWords(lastLookOf(context, child, skill));
  const named = (skills: readonly number[]) => some(skills.map((skill) => `${labelOf(context, skill)} (${on(skill)})`));
  return [
    ...(lost.length === 0 ? [] : [`Lost, as recorded: ${named(lost)}.`]),
    ...(toConfirm.length === 0 ? [] : [`Lost, to confirm: ${named(toConfirm)}.`]),
  ];
}

function signs({ openSigns }: Concerns): string[] {
  if (openSigns.length === 0) return [];
  const named = openSigns.map(({ sign, day }) => `${sign} (${dayInWords(day)})`);
  return [`Warning sign without follow-up: ${some(named)}.`];
}

function past({ cohort }: TableContext, { past: skills, pastWeight }: Concerns): string[] {
  if (skills.length === 0) return [];
  const areas = new Map<string, number>();
  for (const skill of skills) {
    const { area } = cohort.skills[skill] as Skill;
    areas.set(area, (areas.get(area) ?? 0) + 1);
  }
  const byArea = listed([...areas].map(([area, count]) => `${area} ${count}`));
  return [`Past window: ${byArea} (${areSeveral(pastWeight) ? "" : "not "}several by weight).`];
}

function looksToRepeat(context: TableContext, { outOfDate, disagreed }: Concerns): string[] {
  const days = context.settings.recheckDays;
  const named = (skills: readonly number[]) => some(skills.map((skill) => labelOf(context, skill)));
  return [
    ...(outOfDate.length === 0 ? [] : [`Not met over ${days} days ago: ${named(outOfDate)}.`]),
    ...(disagreed.length === 0 ? [] : [`Different results on one day: ${named(disagreed)}.`]),
  ];
}

function due(context: TableContext, { child, correctionStops, opening, visit, transition }: Concerns): string[] {
  const opens = opening.map(({ skill, day }) => `${labelOf(context, skill)} (${dayInWords(day)})`);
  return [
    ...(transition === null ? [] : [transitionInWords(transition, context.asOf)]),
    ...(correctionStops === null ? [] : [stopsInWords(context.cohort.clocks[child] as AgeClock)]),
    ...(visit === null ? [] : [visitInWords(visit)]),
    ...(opens.length === 0 ? [] : [`Window opens: ${some(opens)}.`]),
  ];
}

function transitionInWords({ thirdBirthday, conferenceBy }: Transition, asOf: Day): string {
  const due = asOf <= conferenceBy ? "is due by" : "was due by";
  return `The transition conference ${due} ${dayInWords(conferenceBy)} (third birthday ${dayInWords(thirdBirthday)}).`;
}

function stopsInWords({ birth, correctedBirth, stops }: AgeClock): string {
  return `Correcting age stops on ${dayInWords(stops)}: the age jumps by ${correctedBirth - birth} days.`;
}

function visitInWords({ months, day, screening }: RoutineVisit): string {
  return `Routine visit of ${months} months around ${dayInWords(day)}${screening ? ", with general screening" : ""}.`;
}

function some(names: readonly string[]): string {
  const more = names.length - MOST_NAMED;
  return names.slice(0, MOST_NAMED).join("; ") + (more > 0 ? `; and ${more} more` : "");
}

function labelOf({ cohort }: TableContext, skill: number): string {
  const { label, id } = cohort.skills[skill] as Skill;
  return label === "" ? id : label;
}

function lastLookOf({ attainment }: TableContext, child: number, skill: number): Day {
  return attainment.lastLook[child * attainment.skillCount + skill] as number;
}
