import { type AgeClock, ageMonthsOn } from "../../age/correction";
import type { Day } from "../../age/day";
import { NOT_FOLLOWED } from "../../cohort/following";
import { type Transition, transitionDue } from "../../cohort/transition";
import { DAYS_AHEAD, visitDue } from "../../cohort/visits";
import { findGroupColumn } from "../../records/children/groups";
import type { TableContext } from "../context";
import type { Concerns } from "./concerns";
import { presentSigns, type SeenSign } from "./open-signs";
import { byUrgency, priorityOf, urgencyOf } from "./priority";
import { skillStandings } from "./skill-standing";

/** One entry per child followed on the as-of date: therapists by their codes, then the most urgent first. */
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
  const { cohort, asOf, settings } = context;
  const clock = cohort.clocks[child] as AgeClock;
  const standings = skillStandings(context, child);
  const { last } = standings.checks;
  const transition = transitionDue(clock.birth, asOf);
  const seen = {
    ...standings,
    child,
    therapist,
    ageMonths: ageMonthsOn(clock, asOf),
    openSigns: signs.filter(({ action }) => action === null),
    unchecked: last === null || last < asOf - settings.recheckDays,
    correctionStops: stopsSoon(clock, asOf),
    visit: visitDue(clock.birth, asOf),
    transition,
    cameAfterConference: transition !== null && cameAfter(context, child, transition),
  };
  const { ofSenses, ...urgency } = urgencyOf(context, seen);
  const facts = { ...seen, ofSenses };
  return { ...facts, urgency, priority: priorityOf(context, facts) };
}

function stopsSoon({ birth, correctedBirth, stops }: AgeClock, on: Day): Day | null {
  return correctedBirth !== birth && stops > on && stops <= on + DAYS_AHEAD ? stops : null;
}

function cameAfter({ cohort, asOf }: TableContext, child: number, { conferenceBy }: Transition): boolean {
  return (cohort.following.firstDayUpTo(child, asOf) ?? asOf) > conferenceBy;
}

function byTherapist(a: Concerns, b: Concerns): number {
  return byCodeUnit(a.therapist, b.therapist);
}

function idOf({ cohort }: TableContext, { child }: Concerns): string {
  return cohort.ids[child] as string;
}

function byCodeUnit(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
