import { type AgeBasis, type AgeClock, ageDaysOn } from "../age/correction";
import type { Day } from "../age/day";
import { NO_DAY } from "../records/records";
import type { Attainment } from "./state";

/** The days between which a skill was met: in (after, by]; `by` is null where it was never seen. */
export interface MetBetween {
  readonly after: Day;
  readonly by: Day | null;
}

/** Null where the skill was never looked at, which says nothing. After equals by where the very day is known. */
export function metBetween(attainment: Attainment, cell: number, clock: AgeClock): MetBetween | null {
  if (attainment.lastLook[cell] === NO_DAY) return null;
  const by = attainment.metDay[cell] as number;
  const without = attainment.withoutDay[cell] as number;
  if (by === NO_DAY) return { after: without, by: null };
  if (attainment.exact[cell] === 1) return { after: by, by };
  return { after: without === NO_DAY ? clock.birth : without, by };
}

/** The same as whole days of age, each day by the rule in force that day; `by` is Infinity where it was never seen. */
export function metBetweenAges(between: MetBetween, clock: AgeClock, basis: AgeBasis): { after: number; by: number } {
  return {
    after: ageDaysOn(clock, between.after, basis),
    by: between.by === null ? Infinity : ageDaysOn(clock, between.by, basis),
  };
}
