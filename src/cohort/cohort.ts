import { ageClock, type AgeClock } from "../age/correction";
import type { Enrolments, Records, Skill } from "../records/records";
import type { Settings } from "../settings/settings";
import { Following } from "./following";
import { type Looks, sortLooks } from "./looks";

/** The children of a program as columns, ready for every table: built once from the records. */
export interface Cohort {
  readonly ids: readonly string[];
  readonly clocks: readonly AgeClock[];
  readonly skills: readonly Skill[];
  readonly looks: Looks;
  readonly observers: readonly string[];
  readonly enrolments: Enrolments;
  readonly following: Following;
  /** Whether different results of one day count as met where one of them is. */
  readonly disagreementIsMet: boolean;
}

export function buildCohort(records: Records, settings: Pick<Settings, "correction" | "disagreement">): Cohort {
  const { children, observations, enrolments } = records;
  return {
    ids: children.ids,
    clocks: clocksOf(records, settings),
    skills: records.skills,
    looks: sortLooks(observations, children.ids.length),
    observers: observations.observers,
    enrolments,
    following: new Following(enrolments, children.ids.length),
    disagreementIsMet: settings.disagreement === "met",
  };
}

export function clocksOf(
  { children }: Pick<Records, "children">,
  { correction }: Pick<Settings, "correction">,
): AgeClock[] {
  return children.ids.map((_, child) => {
    const gestationDays = children.gestationDays[child] as number;
    return ageClock(children.birth[child] as number, gestationDays === 0 ? null : gestationDays, correction);
  });
}
