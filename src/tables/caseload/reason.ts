import type { AgeClock } from "../../age/correction";
import { dayInWords } from "../../words/dates";
import type { Transition } from "../../cohort/transition";
import type { RoutineVisit } from "../../cohort/visits";
import { NO_DAY, type Skill } from "../../records/records";
import type { TableContext } from "../context";
import { counted, listed, plural } from "../../words/numbers";
import type { Concerns } from "./concerns";
import { labelOf, named } from "./naming";

/** Everything that stands out about one child, in words. */
export function reasonInWords(context: TableContext, concerns: Concerns): string {
  return reasonsInWords(context, concerns).join(" ");
}

/** The same as sentences, the most urgent first. Where nothing stands out: what was checked, and when. */
export function reasonsInWords(context: TableContext, concerns: Concerns): string[] {
  const reasons = [
    ...losses(context, concerns),
    ...signs(concerns),
    ...past(context, concerns),
    ...disputes(context, concerns),
    ...notKnown(context, concerns),
    ...dated(context, concerns),
  ];
  return concerns.priority < 6 ? reasons : [...reasons, checkedInWords(context, concerns)];
}

function losses(context: TableContext, concerns: Concerns): string[] {
  const lines = (skills: readonly number[]) => named(skills.map((skill) => withDay(context, concerns, skill)));
  const { lost, toConfirm } = concerns;
  return [
    ...(lost.length === 0 ? [] : [`Lost: ${lines(lost)}.`]),
    ...(toConfirm.length === 0 ? [] : [`Possible loss, to confirm: ${lines(toConfirm)}.`]),
  ];
}

function signs({ openSigns }: Concerns): string[] {
  if (openSigns.length === 0) return [];
  return [
    `Warning sign without follow-up: ${named(openSigns.map(({ sign, day }) => `${sign} (${dayInWords(day)})`))}.`,
  ];
}

function past(context: TableContext, { child, past: skills, pastByStop }: Concerns): string[] {
  const { cohort } = context;
  if (skills.length === 0) return [];
  const areas = new Map<string, number>();
  for (const skill of skills) {
    const { area } = cohort.skills[skill] as Skill;
    areas.set(area, (areas.get(area) ?? 0) + 1);
  }
  const byArea = listed([...areas].map(([area, count]) => `${area} ${count}`));
  const { stops } = cohort.clocks[child] as AgeClock;
  return [
    `Past the window at the last check: ${byArea} (${named(skills.map((skill) => withSource(context, skill)))}).`,
    ...(pastByStop.length === 0
      ? []
      : [`Past only because correcting age stopped on ${dayInWords(stops)}: ${namesOf(context, pastByStop)}.`]),
  ];
}

/** A window without a source says so. */
function withSource(context: TableContext, skill: number): string {
  const { expectedShare } = context.cohort.skills[skill] as Skill;
  return `${labelOf(context, skill)}${expectedShare === null ? ", an age without a source" : ""}`;
}

function disputes(context: TableContext, { disagreed }: Concerns): string[] {
  return disagreed.length === 0 ? [] : [`Different results on one day: ${namesOf(context, disagreed)}.`];
}

function notKnown(context: TableContext, { child, checks, unchecked, due, outOfDate }: Concerns): string[] {
  const { attainment, settings } = context;
  const wasChecked = (skill: number) => attainment.lastLook[child * attainment.skillCount + skill] !== NO_DAY;
  const [checked, never] = [due.filter(wasChecked), due.filter((skill) => !wasChecked(skill))];
  const since = checks.last === null ? "Never checked." : `Nothing checked since ${dayInWords(checks.last)}.`;
  return [
    ...(unchecked ? [since] : []),
    ...(checked.length === 0
      ? []
      : [`Not met, and the window closed since the last check: ${namesOf(context, checked)}.`]),
    ...(never.length === 0 ? [] : [`Never checked, and the window has closed: ${namesOf(context, never)}.`]),
    ...(outOfDate.length === 0
      ? []
      : [`Not met, last checked over ${settings.recheckDays} days ago: ${namesOf(context, outOfDate)}.`]),
  ];
}

/** Never "all is well": only what somebody looked at, and on which day. */
function checkedInWords({ cohort, settings }: TableContext, { checks }: Concerns): string {
  const areas = new Set(checks.current.map((skill) => cohort.skills[skill]?.area)).size;
  const within = Number.isFinite(settings.recheckDays) ? `in the last ${settings.recheckDays} days` : "so far";
  const what = `${plural(checks.current.length, "skill", "skills")} in ${plural(areas, "area", "areas")} checked ${within}`;
  return `Last checked on ${dayInWords(checks.last ?? NO_DAY)}; ${what}, none of them lost or past its window.`;
}

function dated(context: TableContext, concerns: Concerns): string[] {
  const { child, correctionStops, opening, visit, transition } = concerns;
  const opens = opening.map(({ skill, day }) => `${labelOf(context, skill)} (${dayInWords(day)})`);
  return [
    ...(transition === null ? [] : [transitionInWords(context, concerns, transition)]),
    ...(correctionStops === null ? [] : [stopsInWords(context.cohort.clocks[child] as AgeClock)]),
    ...(visit === null ? [] : [visitInWords(visit)]),
    ...(opens.length === 0 ? [] : [`Window opens: ${named(opens)}.`]),
  ];
}

function transitionInWords(
  { asOf }: TableContext,
  { cameAfterConference }: Concerns,
  { thirdBirthday, conferenceBy }: Transition,
): string {
  const birthday = `third birthday ${dayInWords(thirdBirthday)}`;
  if (cameAfterConference) {
    return `The transition conference is due as soon as possible: the child came after ${dayInWords(conferenceBy)} (${birthday}).`;
  }
  const due = asOf <= conferenceBy ? "is due by" : "was due by";
  return `The transition conference ${due} ${dayInWords(conferenceBy)} (${birthday}); the records do not show whether it was held.`;
}

function stopsInWords(clock: AgeClock): string {
  const jump = counted(clock.correctedBirth - clock.birth);
  return `Correcting age stops on ${dayInWords(clock.stops)}: the age jumps by ${jump} days.`;
}

function visitInWords({ months, day, screening, autismScreening }: RoutineVisit): string {
  const kinds = [...(screening ? ["general"] : []), ...(autismScreening ? ["autism"] : [])];
  const asked = kinds.length === 0 ? "" : `, with ${listed(kinds)} screening`;
  return `Routine visit of ${months} months around ${dayInWords(day)}${asked}.`;
}

function namesOf(context: TableContext, skills: readonly number[]): string {
  return named(skills.map((skill) => labelOf(context, skill)));
}

function withDay(context: TableContext, { child }: Concerns, skill: number): string {
  const { attainment } = context;
  const day = attainment.lastLook[child * attainment.skillCount + skill] as number;
  return `${labelOf(context, skill)} (${dayInWords(day)})`;
}
