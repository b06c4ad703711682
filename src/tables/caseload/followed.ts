import { type AgeClock, ageMonthsOn } from "../../age/correction";
import type { Day } from "../../age/day";
import { NOT_FOLLOWED } from "../../cohort/following";
import { transitionDue } from "../../cohort/transition";
import { DAYS_AHEAD, visitDue } from "../../cohort/visits";
import { findGroupColumn } from "../../records/children/groups";
import type { Skill } from "../../records/records";
import type { TableContext } from "../context";
import type { Concerns } from "./concerns";
import { presentSigns, type SeenSign } from "./open-signs";
import { pastWindowWeight } from "./past-weight";
import { priorityOf } from "./priority";
import { skillStandings } from "./skill-standing";

/** One entry a child followed on the as-of date: therapists by their codes, then the most urgent first. */
export function concernsOfFollowed(context: TableContext): Concerns[] {
  const { cohort, asOf, records } = context;
  const signs = presentSigns(records.signs, asOf);
  const therapists = findGroupColumn(cohort.enrolments.columns, "Therapist")?.values ?? [];
  return cohort.ids
    .flatMap((_, child) => {
      const enrolment = cohort.following.enrolmentOn(child, asOf);
      if (enrolment === NOT_FOLLOWED) return [];
      return [concernsOf(context, child, therapists[enrolment] ?? "", signs.get(child) ?? [])];
    })
    .sort((a, b) => byTherapist(a, b) || byUrgency(a, b) || byCodeUnit(idOf(context, a), idOf(context, b)));
}

function concernsOf(context: TableContext, child: number, therapist: string, signs: readonly SeenSign[]): Concerns {
  const { cohort, asOf } = context;
  const clock = cohort.clocks[child] as AgeClock;
  const standings = skillStandings(context, child);
  const facts = {
    ...standings,
    child,
    therapist,
    ageMonths: ageMonthsOn(clock, asOf),
    openSigns: signs.filter(({ action }) => action === null),
    pastWeight: standings.past.reduce((sum, skill) => sum + pastWindowWeight(cohort.skills[skill] as Skill), 0),
    correctionStops: stopsSoon(clock, asOf),
    visit: visitDue(clock.birth, asOf),
    transition: transitionDue(clock.birth, asOf),
  };
  return { ...facts, priority: priorityOf(facts) };
}

function stopsSoon({ birth, correctedBirth, stops }: AgeClock, on: Day): Day | null {
  return correctedBirth !== birth && stops > on && stops <= on + DAYS_AHEAD ? stops : null;
}

function byTherapist(a: Concerns, b: Concerns): number {
  return byCodeUnit(a.therapist, b.therapist);
}

/** Within a priority: more losses and signs, then more weight past windows, then more looks to repeat. */
function byUrgency(a: Concerns, b: Concerns): number {
  return a.priority - b.priority || first(b) - first(a) || b.pastWeight - a.pastWeight || again(b) - again(a);
}

function first({ lost, toConfirm, openSigns }: Concerns): number {
  return lost.length + toConfirm.length + openSigns.length;
}

function again({ outOfDate, disagreed }: Concerns): number {
  return outOfDate.length + disagreed.length;
}

function idOf({ cohort }: TableContext, { child }: Concerns): string {
  return cohort.ids[child] as string;
}

function byCodeUnit(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
