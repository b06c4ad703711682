import type { Day } from "../../age/day";
import type { Transition } from "../../cohort/transition";
import type { RoutineVisit } from "../../cohort/visits";
import type { SeenSign } from "./open-signs";
import type { SkillStandings } from "./skill-standing";

/** Everything that a caseload says about one child, before it is put in words. */
export interface Concerns extends SkillStandings {
  readonly child: number;
  /** "" where none is recorded. */
  readonly therapist: string;
  readonly ageMonths: number;
  readonly priority: Priority;
  /** Warning signs marked present, without a follow-up. */
  readonly openSigns: readonly SeenSign[];
  readonly pastWeight: number;
  /** The day correcting stops, where it is one of the next 30. */
  readonly correctionStops: Day | null;
  readonly visit: RoutineVisit | null;
  readonly transition: Transition | null;
}

/** 1 comes first. */
export type Priority = 1 | 2 | 3 | 4 | 5;
