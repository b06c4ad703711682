import { calendarOf, type Day, dayOf } from "../../age/day";
import type { TableContext } from "../context";
import type { Concerns } from "./concerns";
import { concernsOfFollowed } from "./followed";
import { type PlannedVisit, plannedVisits, VISITS_IN_PLAN } from "./plan-visits";
import { planItems } from "./plan-items";

export interface TherapistPlan {
  readonly therapist: string;
  readonly visits: readonly PlannedVisit[];
}

/** The plan of every therapist with children followed on the as-of date. */
export function therapistPlans(context: TableContext, visits = VISITS_IN_PLAN): TherapistPlan[] {
  const byTherapist = new Map<string, Concerns[]>();
  for (const concerns of concernsOfFollowed(context)) {
    const own = byTherapist.get(concerns.therapist) ?? [];
    byTherapist.set(concerns.therapist, own);
    own.push(concerns);
  }
  return [...byTherapist].map(([therapist, own]) => ({ therapist, visits: planOf(context, own, visits) }));
}

/** The plan of one therapist, whose children come in order of urgency. */
export function planOf(context: TableContext, own: readonly Concerns[], visits = VISITS_IN_PLAN): PlannedVisit[] {
  const horizon = planHorizon(context.asOf);
  return plannedVisits(
    own.map((concerns) => planItems(context, concerns, horizon)),
    visits,
  );
}

/** The day of the report that the plan serves: the last day of the quarter that the day after the as-of date lies in. */
export function planHorizon(asOf: Day): Day {
  const { year, month } = calendarOf(asOf + 1);
  const lastMonth = month - ((month - 1) % 3) + 2;
  return lastMonth === 12 ? dayOf(year + 1, 1, 1) - 1 : dayOf(year, lastMonth + 1, 1) - 1;
}
