import type { Day } from "../age/day";
import { attain } from "../cohort/attainment";
import { BOX, boxOn } from "../cohort/boxes";
import type { Cohort } from "../cohort/cohort";
import { NOT_FOLLOWED } from "../cohort/following";
import { firstDayOfMonth, monthOf, quarterLabel, quarterOf } from "../cohort/person-time";
import type { ChildCounts } from "../statistics/standardised-change";

export const QUARTERS = 8;

/** A quarter and the day on which it is looked at: its last, or the as-of date. */
export interface Quarter {
  readonly label: string;
  readonly first: Day;
  readonly day: Day;
}

/** The last eight quarters, the one of the as-of date included. */
export function lastQuarters(asOf: Day): Quarter[] {
  const last = quarterOf(monthOf(asOf));
  return Array.from({ length: QUARTERS }, (_, index) => {
    const quarter = last - QUARTERS + 1 + index;
    const end = firstDayOfMonth((quarter + 1) * 3) - 1;
    return { label: quarterLabel(quarter), first: firstDayOfMonth(quarter * 3), day: Math.min(end, asOf) };
  });
}

export interface SkillCounts {
  children: number;
  met: number;
  assessed: number;
}

/** Counts of one quarter: at `group * skillCount + skill`. */
export type QuarterCounts = readonly SkillCounts[];

/**
 * Children followed on the day of a quarter, by group and skill: how many are assessed, and have met it.
 *
 * @param groupOf - the group of each row of Enrolments
 */
export function countQuarter(
  cohort: Cohort,
  { day }: Quarter,
  groupOf: Int32Array,
  groupCount: number,
  recheckDays: number,
): QuarterCounts {
  const skillCount = cohort.skills.length;
  const counts = Array.from({ length: groupCount * skillCount }, () => ({ children: 0, met: 0, assessed: 0 }));
  const attainment = attain(cohort, day);
  for (let child = 0; child < cohort.ids.length; child += 1) {
    const enrolment = cohort.following.enrolmentOn(child, day);
    if (enrolment === NOT_FOLLOWED) continue;
    for (let skill = 0; skill < skillCount; skill += 1) {
      const at = counts[(groupOf[enrolment] as number) * skillCount + skill] as SkillCounts;
      const box = boxOn(cohort, attainment, child, skill, day, recheckDays);
      at.children += 1;
      if (box === BOX.hadAtFirstLook || box === BOX.gained) at.met += 1;
      if (box !== BOX.notAssessed && box !== BOX.outOfDate) at.assessed += 1;
    }
  }
  return counts;
}

/** For how many of the children followed at the end of each quarter correcting stopped within it. */
export function correctionStops({ cohort }: { readonly cohort: Cohort }, quarters: readonly Quarter[]): number[] {
  return quarters.map(
    ({ first, day }) =>
      cohort.clocks.filter(
        ({ birth, stops }, child) =>
          stops > birth && stops >= first && stops <= day && cohort.following.enrolmentOn(child, day) !== NOT_FOLLOWED,
      ).length,
  );
}

/** What each child followed on either day has in the skills of an area, by site; children without a check are left out. */
export function childCounts(
  cohort: Cohort,
  spans: readonly [Quarter, Quarter],
  siteOf: Int32Array,
  sites: readonly number[],
  area: string,
  recheckDays: number,
): ChildCounts[][] {
  const skills = cohort.skills.flatMap((skill, at) => (skill.area === area ? [at] : []));
  const read = spans.map(({ day }) => ({ day, attainment: attain(cohort, day) }));
  const on = (child: number, { day, attainment }: (typeof read)[number], site: number) => {
    const enrolment = cohort.following.enrolmentOn(child, day);
    if (enrolment === NOT_FOLLOWED || siteOf[enrolment] !== site) return { count: 0, of: 0 };
    const boxes = skills.map((skill) => boxOn(cohort, attainment, child, skill, day, recheckDays));
    const checked = boxes.filter((box) => box !== BOX.notAssessed && box !== BOX.outOfDate);
    const met = checked.filter((box) => box === BOX.hadAtFirstLook || box === BOX.gained);
    return { count: met.length, of: checked.length };
  };
  return cohort.ids
    .map((_, child) =>
      sites
        .map((site, stratum) => ({ stratum, before: on(child, read[0]!, site), after: on(child, read[1]!, site) }))
        .filter(({ before, after }) => before.of + after.of > 0),
    )
    .filter((own) => own.length > 0);
}
