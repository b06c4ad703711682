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
  readonly urgency: Urgency;
  /** Warning signs marked present, without a follow-up. */
  readonly openSigns: readonly SeenSign[];
  /** Skills of hearing or seeing among those lost, past or due. */
  readonly ofSenses: readonly number[];
  /** True where nobody has checked a skill of the child within the recheck limit. */
  readonly unchecked: boolean;
  /** The day correcting stops, where it is one of the next 30. */
  readonly correctionStops: Day | null;
  readonly visit: RoutineVisit | null;
  readonly transition: Transition | null;
  /** True where the child came to the program after the last day for the transition conference. */
  readonly cameAfterConference: boolean;
}

/** 1 comes first. */
export type Priority = 1 | 2 | 3 | 4 | 5 | 6;

/** What orders the children of one priority, in this order. */
export interface Urgency {
  readonly senses: boolean;
  /** Areas with something lost, past or due. */
  readonly areas: number;
  /** Skills lost, past or due. */
  readonly skills: number;
  /** The largest age at the check over the close, among these. */
  readonly ageOverClose: number;
}
