import { attain } from "../src/cohort/attainment";
import { type ChildCounts, countChildren } from "../src/cohort/looks-by-band";
import type { Attainment } from "../src/cohort/state";
import { cohortFrom, EDGES, type Invented } from "./observations";

export const AFTER_ALL = 100_000;

/** The job with all that belongs to it: sorting, the clocks of the children, counting. */
export function ourChildCounts(invented: Invented, ids: readonly string[]): ChildCounts {
  return countChildren(cohortFrom(invented, ids), EDGES);
}

export function ourIntervals(invented: Invented, ids: readonly string[]): Attainment {
  return attain(cohortFrom(invented, ids), AFTER_ALL);
}
