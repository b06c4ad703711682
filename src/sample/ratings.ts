import type { Day } from "../age/day";
import { type Chance, chanceOf } from "./chance";
import type { SampleChild } from "./children";
import { OUTCOMES } from "./program";
import type { Stay } from "./stays";

export interface SampleRating {
  readonly child: number;
  readonly outcome: string;
  readonly entryDay: Day;
  readonly entryLevel: number;
  readonly exitDay: Day | null;
  readonly exitLevel: number | null;
  readonly gained: "yes" | "no" | null;
}

const SHARE_RATED_AT_ENTRY = 0.9;
const SHARE_RATED_AT_EXIT = 0.85;
/** A child is rated on leaving after at least six months. */
const DAYS_BEFORE_EXIT_RATING = 183;

/** Levels from 1 to 5 at entry and, for those who stayed half a year and left, at exit. */
export function drawRatings(children: readonly SampleChild[], seed: number, last: Day): SampleRating[] {
  const chance = chanceOf(seed, 9);
  return children.flatMap((child, index) => {
    const first = child.stays[0] as Stay;
    const entryDay = first.enrolled + chance.whole(7, 30);
    const left = (child.stays[child.stays.length - 1] as Stay).left;
    if (entryDay > Math.min(last, (first.left ?? last + 1) - 1) || !chance.yes(SHARE_RATED_AT_ENTRY)) return [];
    const stayed = left !== null && left - first.enrolled >= DAYS_BEFORE_EXIT_RATING;
    const exitDay = stayed && chance.yes(SHARE_RATED_AT_EXIT) ? left - chance.whole(1, 15) : null;
    return OUTCOMES.map((outcome) => drawOne(chance, index, outcome, entryDay, exitDay));
  });
}

function drawOne(chance: Chance, child: number, outcome: string, entryDay: Day, exitDay: Day | null): SampleRating {
  const entryLevel = chance.weighted([1, 2, 3, 4, 5], [6, 18, 30, 29, 17]);
  const start = { child, outcome, entryDay, entryLevel };
  if (exitDay === null) return { ...start, exitDay: null, exitLevel: null, gained: null };
  const change = chance.weighted([-1, 0, 1, 2], [7, 43, 38, 12]);
  const exitLevel = Math.min(5, Math.max(1, entryLevel + change));
  const gainedAny = exitLevel > entryLevel || chance.yes(0.88);
  return { ...start, exitDay, exitLevel, gained: gainedAny ? "yes" : "no" };
}
