import { type PlanItem, tierOf } from "./plan-item";

/** Visits of one therapist that a plan fills where nobody says how many: about one a week over a quarter. Our choice. */
export const VISITS_IN_PLAN = 12;
/** About two a working day over a quarter: more than one person's plan is for. Our choice. */
export const MOST_VISITS_IN_PLAN = 120;
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
 * @param visits - how many there is room for
 */
export function plannedVisits(children: readonly (readonly PlanItem[])[], visits = VISITS_IN_PLAN): PlannedVisit[] {
  return children
    .flatMap(visitsOfChild)
    .sort((a, b) => a.tier - b.tier || b.spared - a.spared || a.nth - b.nth)
    .slice(0, visits);
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

/** The visits that a person asked for, as written; the usual number where nothing is, null where it is no such number. */
export function visitsAsked(text: string): number | null {
  const trimmed = text.trim();
  if (trimmed === "") return VISITS_IN_PLAN;
  const visits = /^\d{1,3}$/.test(trimmed) ? Number(trimmed) : 0;
  return visits >= 1 && visits <= MOST_VISITS_IN_PLAN ? visits : null;
}
