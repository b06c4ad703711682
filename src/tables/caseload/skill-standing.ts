import { type AgeClock, ageMonthsOn, anchorOn, firstDayOfAge } from "../../age/correction";
import type { Day } from "../../age/day";
import { addMonths, decimalMonths } from "../../age/months";
import { BOX, boxOn } from "../../cohort/boxes";
import { NOT_FOLLOWED } from "../../cohort/following";
import { isLost } from "../../cohort/follows";
import { replacedSkills } from "../../cohort/replaced";
import { STATE } from "../../cohort/state";
import { DAYS_AHEAD } from "../../cohort/visits";
import { NO_DAY, type Skill } from "../../records/records";
import type { TableContext } from "../context";

/** What stands out about the skills of one child on the as-of date, as indexes of Skills. */
export interface SkillStandings {
  readonly lost: readonly number[];
  readonly toConfirm: readonly number[];
  /** Checked and not met on a day when the age was at or after the close. */
  readonly past: readonly number[];
  /** Those of `past` that are past only because correcting stopped within the last 3 months. */
  readonly pastByStop: readonly number[];
  /** The window closed since the last check, or on a day in the program where it was never checked. */
  readonly due: readonly number[];
  readonly outOfDate: readonly number[];
  /** Two different results on the day of the last look. */
  readonly disagreed: readonly number[];
  readonly opening: readonly OpeningWindow[];
  readonly checks: Checks;
}

export interface OpeningWindow {
  readonly skill: number;
  readonly day: Day;
}

/** What was checked of a child, and when. */
export interface Checks {
  /** Null for a child who was never checked. */
  readonly last: Day | null;
  /** Skills last checked within the recheck limit. */
  readonly current: readonly number[];
}

/** A skill that is past because correcting stopped counts in full from this many months after the stop. */
const MONTHS_AFTER_STOP = 3;

/** Skills that a later one has replaced are left out of all but losses, which the state settles. */
export function skillStandings(context: TableContext, child: number): SkillStandings {
  const { cohort, attainment, asOf, settings } = context;
  const replaced = replacedSkills(attainment, cohort.skills, child);
  const stateOf = (skill: number) => attainment.state[child * attainment.skillCount + skill] as number;
  const where = (is: (skill: number) => boolean) => cohort.skills.flatMap((_, skill) => (is(skill) ? [skill] : []));
  const open = (is: (skill: number) => boolean) => where((skill) => replaced[skill] === 0 && is(skill));
  const past = open((skill) => isPast(context, child, skill));
  return {
    lost: where((skill) => stateOf(skill) === STATE.lost),
    toConfirm: where((skill) => stateOf(skill) === STATE.lostToConfirm),
    past,
    pastByStop: past.filter((skill) => isPastByStop(context, child, skill)),
    due: open((skill) => isDue(context, child, skill)),
    outOfDate: open((skill) => boxOn(cohort, attainment, child, skill, asOf, settings.recheckDays) === BOX.outOfDate),
    disagreed: open(
      (skill) => attainment.disagreed[child * attainment.skillCount + skill] === 1 && stateOf(skill) !== STATE.met,
    ),
    opening: open((skill) => stateOf(skill) !== STATE.met && !isLost(stateOf(skill))).flatMap((skill) => {
      const day = opensSoon(context, child, skill);
      return day === null ? [] : [{ skill, day }];
    }),
    checks: checksOf(context, child),
  };
}

export function isBelowMet(state: number): boolean {
  return state === STATE.notMet || state === STATE.emerging;
}

/** True where the skill was checked and not met on a day when the child's age was at or after the close. */
export function isPast(context: TableContext, child: number, skill: number): boolean {
  const { look, state, close } = cellOf(context, child, skill);
  return isBelowMet(state) && close !== null && look >= close;
}

/**
 * True where the window closed after the last check, which did not see the skill, or, where nobody ever checked it, on a day
 * when the child was in the program.
 */
export function isDue(context: TableContext, child: number, skill: number): boolean {
  const { look, state, close } = cellOf(context, child, skill);
  if (close === null || close > context.asOf) return false;
  if (isBelowMet(state)) return look < close;
  return state === STATE.notAssessed && context.cohort.following.enrolmentOn(child, close) !== NOT_FOLLOWED;
}

/**
 * How far past its close a skill was at its last check: 1 at the close, 1.25 a quarter of the closing age later. A skill
 * that was never checked counts as at its close.
 */
export function ageOverClose(context: TableContext, child: number, skill: number): number {
  const { cohort } = context;
  const { closesMonths, ageBasis } = cohort.skills[skill] as Skill;
  const { look } = cellOf(context, child, skill);
  if (closesMonths === null || look === NO_DAY) return 1;
  return ageMonthsOn(cohort.clocks[child] as AgeClock, look, ageBasis) / closesMonths;
}

/** The last check, the state, and the first day on which the age is at or after the close; null where no close is given. */
function cellOf({ cohort, attainment }: TableContext, child: number, skill: number) {
  const cell = child * attainment.skillCount + skill;
  const { closesMonths, ageBasis } = cohort.skills[skill] as Skill;
  const close = closesMonths === null ? null : firstDayOfAge(cohort.clocks[child] as AgeClock, closesMonths, ageBasis);
  return { look: attainment.lastLook[cell] as number, state: attainment.state[cell] as number, close };
}

/** The age jumps where correcting stops: a skill can be past on the day after, and was not the day before. */
function isPastByStop({ cohort, attainment, asOf }: TableContext, child: number, skill: number): boolean {
  const clock = cohort.clocks[child] as AgeClock;
  const { closesMonths, ageBasis } = cohort.skills[skill] as Skill;
  const look = attainment.lastLook[child * attainment.skillCount + skill] as number;
  if (ageBasis !== "corrected" || closesMonths === null || clock.correctedBirth === clock.birth) return false;
  const justStopped = clock.stops <= asOf && clock.stops > addMonths(asOf, -MONTHS_AFTER_STOP);
  return (
    justStopped && anchorOn(clock, look) === clock.birth && decimalMonths(clock.correctedBirth, look) < closesMonths
  );
}

/** The day the window opens, where that is after the as-of date and at most 30 days off. */
function opensSoon({ cohort, asOf }: TableContext, child: number, skill: number): Day | null {
  const { opensMonths, ageBasis } = cohort.skills[skill] as Skill;
  if (opensMonths === null) return null;
  const day = firstDayOfAge(cohort.clocks[child] as AgeClock, opensMonths, ageBasis);
  return day > asOf && day <= asOf + DAYS_AHEAD ? day : null;
}

function checksOf({ cohort, attainment, asOf, settings }: TableContext, child: number): Checks {
  const looks = cohort.skills.map((_, skill) => attainment.lastLook[child * attainment.skillCount + skill] as number);
  const made = looks.filter((look) => look !== NO_DAY);
  return {
    last: made.length === 0 ? null : made.reduce((latest, look) => Math.max(latest, look)),
    current: looks.flatMap((look, skill) => (look !== NO_DAY && look >= asOf - settings.recheckDays ? [skill] : [])),
  };
}
