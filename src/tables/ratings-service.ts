import type { Day } from "../age/day";
import type { Following } from "../cohort/following";
import { NOT_FOLLOWED } from "../cohort/following";

/** Six months between entry and exit, as published guidance for the federal indicator counts them in days. */
export const SIX_MONTHS_DAYS = 182;

/** The days on which a child was followed up to a day, over all its enrolments; a day of two enrolments counts once. */
export function servedDays(following: Following, child: number, last: Day): number {
  const changes = [...new Set(following.changesOf(child))].filter((day) => day <= last).sort((a, b) => a - b);
  return changes.reduce((days, start, at) => {
    const end = changes[at + 1] ?? last + 1;
    return following.enrolmentOn(child, start) === NOT_FOLLOWED ? days : days + end - start;
  }, 0);
}
