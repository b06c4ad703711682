import type { Day } from "../age/day";
import { addMonths } from "../age/months";

/**
 * Ages of routine visits, months since birth, at which a page for the child's clinician is of use, and those at which
 * general developmental screening is recommended.
 * Source: Lipkin and Macias, Promoting optimal development, Pediatrics 2020;145(1):e20193449 (screening at 9, 18 and 30
 * months, surveillance at every visit).
 */
export const ROUTINE_VISIT_MONTHS: readonly number[] = [2, 4, 6, 9, 12, 15, 18, 24, 30, 36];
export const SCREENING_MONTHS: readonly number[] = [9, 18, 30];
export const AUTISM_SCREENING_MONTHS: readonly number[] = [18, 24];

/** How far a caseload looks ahead: what falls on the as-of date or the 30 days after it is due. */
export const DAYS_AHEAD = 30;

export interface RoutineVisit {
  readonly months: number;
  /** The day the child comes to that age. Visits themselves are not in the records. */
  readonly day: Day;
  /** General developmental screening. */
  readonly screening: boolean;
  readonly autismScreening: boolean;
}

/** The visit whose age the child comes to from the day given to 30 days later, or null. */
export function visitDue(birth: Day, on: Day): RoutineVisit | null {
  const next = nextVisit(birth, on);
  return next !== null && next.day <= on + DAYS_AHEAD ? next : null;
}

/** The first visit whose age the child comes to on that day or later; null after the last. */
export function nextVisit(birth: Day, on: Day): RoutineVisit | null {
  return visitsOf(birth).find(({ day }) => day >= on) ?? null;
}

/** The last visit whose age the child came to before that day; null before the first. */
export function visitBefore(birth: Day, on: Day): RoutineVisit | null {
  return visitsOf(birth).findLast(({ day }) => day < on) ?? null;
}

function visitsOf(birth: Day): RoutineVisit[] {
  return ROUTINE_VISIT_MONTHS.map((months) => ({
    months,
    day: addMonths(birth, months),
    screening: SCREENING_MONTHS.includes(months),
    autismScreening: AUTISM_SCREENING_MONTHS.includes(months),
  }));
}
