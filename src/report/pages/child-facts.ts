import type { AgeClock } from "../../age/correction";
import type { Day } from "../../age/day";
import { type RoutineVisit, nextVisit, visitBefore } from "../../cohort/visits";
import type { Skill } from "../../records/records";
import type { Concerns } from "../../tables/caseload/concerns";
import { presentSigns, type SeenSign } from "../../tables/caseload/open-signs";
import type { TableContext } from "../../tables/context";

/** What every part of a child page is written from. */
export interface ChildFacts {
  readonly context: TableContext;
  readonly child: number;
  readonly id: string;
  readonly clock: AgeClock;
  readonly concerns: Concerns;
  /** The visit that the page is for; null after the last age of the schedule. */
  readonly next: RoutineVisit | null;
  /** The visit that "new" is counted from; null before the first. */
  readonly before: RoutineVisit | null;
  /** Signs marked present so far; null where the workbook has no table Signs. */
  readonly signs: readonly SeenSign[] | null;
  readonly room: Room;
}

/** How many lines of each kind the page has room for. */
export interface Room {
  readonly newSkills: number;
  readonly seenPerArea: number;
  readonly notYetPerArea: number;
  readonly ideas: number;
}

export function childFacts(context: TableContext, concerns: Concerns, room: Room): ChildFacts {
  const { cohort, asOf, records } = context;
  const { child } = concerns;
  const clock = cohort.clocks[child] as AgeClock;
  return {
    context,
    child,
    id: cohort.ids[child] as string,
    clock,
    concerns,
    next: nextVisit(clock.birth, asOf),
    before: visitBefore(clock.birth, asOf),
    signs: records.signs === null ? null : (presentSigns(records.signs, asOf).get(child) ?? []),
    room,
  };
}

/** Where the child stands with one skill. */
export interface SkillFacts {
  readonly skill: Skill;
  readonly index: number;
  /** STATE. */
  readonly state: number;
  /** NO_DAY where there is none. */
  readonly metDay: Day;
  readonly withoutDay: Day;
  readonly lastLook: Day;
  readonly exact: boolean;
}

export function skillsOf({ context: { cohort, attainment }, child }: ChildFacts): SkillFacts[] {
  return cohort.skills.map((skill, index) => {
    const cell = child * attainment.skillCount + index;
    return {
      skill,
      index,
      state: attainment.state[cell] as number,
      metDay: attainment.metDay[cell] as number,
      withoutDay: attainment.withoutDay[cell] as number,
      lastLook: attainment.lastLook[cell] as number,
      exact: attainment.exact[cell] === 1,
    };
  });
}
