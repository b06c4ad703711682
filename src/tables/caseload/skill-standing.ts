import { type AgeClock, ageMonthsOn, firstDayOfAge } from "../../age/correction";
import type { Day } from "../../age/day";
import { BOX, boxOn } from "../../cohort/boxes";
import { isLost } from "../../cohort/follows";
import { replacedSkills } from "../../cohort/replaced";
import { STATE } from "../../cohort/state";
import { DAYS_AHEAD } from "../../cohort/visits";
import { windowStatus } from "../../cohort/window";
import type { Skill } from "../../records/records";
import type { TableContext } from "../context";

/** What stands out about the skills of one child on the as-of date, as indexes of Skills. */
export interface SkillStandings {
  readonly lost: readonly number[];
  readonly toConfirm: readonly number[];
  /** Looked for, not met at the last look however old, and past the window. */
  readonly past: readonly number[];
  readonly outOfDate: readonly number[];
  /** Two different results on the day of the last look. */
  readonly disagreed: readonly number[];
  readonly opening: readonly OpeningWindow[];
}

export interface OpeningWindow {
  readonly skill: number;
  readonly day: Day;
}

/** Skills that a later one has replaced are left out of all but losses, which the state settles. */
export function skillStandings(context: TableContext, child: number): SkillStandings {
  const { cohort, attainment, asOf, settings } = context;
  const replaced = replacedSkills(attainment, cohort.skills, child);
  const clock = cohort.clocks[child] as AgeClock;
  const stateOf = (skill: number) => attainment.state[child * attainment.skillCount + skill] as number;
  const where = (is: (skill: number) => boolean) => cohort.skills.flatMap((_, skill) => (is(skill) ? [skill] : []));
  const open = (is: (skill: number) => boolean) => where((skill) => replaced[skill] === 0 && is(skill));
  return {
    lost: where((skill) => stateOf(skill) === STATE.lost),
    toConfirm: where((skill) => stateOf(skill) === STATE.lostToConfirm),
    past: open((skill) => isBelowMet(stateOf(skill)) && isPast(clock, asOf, cohort.skills[skill] as Skill)),
    outOfDate: open((skill) => boxOn(cohort, attainment, child, skill, asOf, settings.recheckDays) === BOX.outOfDate),
    disagreed: open(
      (skill) => attainment.disagreed[child * attainment.skillCount + skill] === 1 && stateOf(skill) !== STATE.met,
    ),
    opening: open((skill) => stateOf(skill) !== STATE.met && !isLost(stateOf(skill))).flatMap((skill) => {
      const day = opensSoon(clock, asOf, cohort.skills[skill] as Skill);
      return day === null ? [] : [{ skill, day }];
    }),
  };
}

export function isBelowMet(state: number): boolean {
  return state === STATE.notMet || state === STATE.emerging;
}

function isPast(clock: AgeClock, on: Day, skill: Skill): boolean {
  return windowStatus(ageMonthsOn(clock, on, skill.ageBasis), skill) === "past window";
}

/** The day the window opens, where that is after the day given and at most 30 days off. */
function opensSoon(clock: AgeClock, on: Day, skill: Skill): Day | null {
  if (skill.opensMonths === null) return null;
  const day = firstDayOfAge(clock, skill.opensMonths, skill.ageBasis);
  return day > on && day <= on + DAYS_AHEAD ? day : null;
}
