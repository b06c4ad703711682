import type { Day } from "../age/day";
import { NO_DAY } from "../records/records";
import { type Attainment, STATE } from "./state";
import type { Cohort } from "./cohort";

/** Every child followed stands in exactly one box per skill (METHOD.md, section 5). */
export const BOX = { hadAtFirstLook: 0, gained: 1, notMet: 2, outOfDate: 3, lost: 4, notAssessed: 5 } as const;
export const BOX_LABELS = [
  "had at first look",
  "gained here",
  "not met",
  "out of date",
  "lost",
  "not assessed",
] as const;
export const BOX_COUNT = BOX_LABELS.length;

const BOX_OF_STATE: readonly number[] = [BOX.notAssessed, -1, BOX.lost, BOX.lost, BOX.notMet, BOX.notMet];

/** The box of a child and skill on a day; `attainment` must have been read up to that day. */
export function boxOn(
  cohort: Cohort,
  attainment: Attainment,
  child: number,
  skill: number,
  day: Day,
  recheckDays: number,
): number {
  const cell = child * attainment.skillCount + skill;
  const state = attainment.state[cell] as number;
  if (state === STATE.met) return hadAtFirstLook(cohort, attainment, child, cell) ? BOX.hadAtFirstLook : BOX.gained;
  const isBelowMet = state === STATE.notMet || state === STATE.emerging;
  if (isBelowMet && (attainment.lastLook[cell] as number) < day - recheckDays) return BOX.outOfDate;
  return BOX_OF_STATE[state] as number;
}

/**
 * True where no look without the skill came before the one that saw it. A skill whose very day is known counts as
 * gained here from the first day followed on.
 */
export function hadAtFirstLook(cohort: Cohort, attainment: Attainment, child: number, cell: number): boolean {
  if (attainment.metDay[cell] === NO_DAY || attainment.withoutDay[cell] !== NO_DAY) return false;
  if (attainment.exact[cell] === 0) return true;
  const metDay = attainment.metDay[cell] as number;
  return cohort.following.firstDayUpTo(child, metDay) === null;
}
