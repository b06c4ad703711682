import { type PlanItem, tierOf } from "./plan-item";

/** Visits of one therapist that a plan fills: about one a week over a quarter. Our choice. */
export const VISITS_IN_PLAN = 12;
/** Skills that one visit has room to look at. Our choice. */
export const LOOKS_PER_VISIT = 8;

/** One visit to one child. */
export interface PlannedVisit {
  readonly child: number;
  readonly items: readonly PlanItem[];
}

/**
 * The visits of one therapist, the best first: safety by tier, then those that spare the next report most unknowns, then
 * a child's first visit before another's second. A child's later visit never spares more than an earlier one, so that
 * taking the best each time gives the most over all.
 *
 * @param children - the items of each child, children in order of urgency, which settles ties
 */
export function plannedVisits(children: readonly (readonly PlanItem[])[]): PlannedVisit[] {
  return children
    .flatMap(visitsOfChild)
    .sort((a, b) => a.tier - b.tier || b.spared - a.spared || a.nth - b.nth)
    .slice(0, VISITS_IN_PLAN);
}

interface RankedVisit extends PlannedVisit {
  readonly tier: number;
  /** 0 for the child's first visit of the plan. */
  readonly nth: number;
  /** Unknowns of the next report that the visit spares it. */
  readonly spared: number;
}

function visitsOfChild(items: readonly PlanItem[]): RankedVisit[] {
  const sorted = [...items].sort((a, b) => tierOf(a) - tierOf(b) || a.rank - b.rank);
  const visits: RankedVisit[] = [];
  for (let from = 0; from < sorted.length; from += LOOKS_PER_VISIT) {
    const looked = sorted.slice(from, from + LOOKS_PER_VISIT);
    const [first] = looked as [PlanItem];
    const spared = looked.filter(({ narrows }) => narrows).length;
    const before = visits.at(-1)?.spared ?? Infinity;
    const ranked = { tier: tierOf(first), nth: visits.length, spared: Math.min(spared, before) };
    visits.push({ child: first.child, items: looked, ...ranked });
  }
  return visits;
}
