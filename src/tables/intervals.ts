import type { AgeClock } from "../age/correction";
import { hadAtFirstLook } from "../cohort/boxes";
import { metBetween, metBetweenAges } from "../cohort/interval";
import { type TableContext, groupOfEverFollowed } from "./context";

/** The children of one group who were observed for one skill: between which ages each met it. */
export interface SkillIntervals {
  /** Whole days of age, in (after, by]; `by` is Infinity where it was never seen. */
  readonly after: number[];
  readonly by: number[];
  hadAtFirstLook: number;
  interval: number;
  notMet: number;
}

/** For every group and skill, the children ever followed and observed: at `group * skillCount + skill`. */
export function intervalsByGroup(context: TableContext): readonly SkillIntervals[] {
  const { cohort, groups, attainment } = context;
  const skillCount = cohort.skills.length;
  const groupOf = groupOfEverFollowed(context);
  const all = Array.from({ length: groups.values.length * skillCount }, noIntervals);
  cohort.ids.forEach((_, child) => {
    const group = groupOf[child] as number;
    if (group < 0) return;
    cohort.skills.forEach((skill, index) => {
      const cell = child * skillCount + index;
      const clock = cohort.clocks[child] as AgeClock;
      const between = metBetween(attainment, cell, clock);
      if (!between) return;
      const at = all[group * skillCount + index] as SkillIntervals;
      const ages = metBetweenAges(between, clock, skill.ageBasis);
      at.after.push(ages.after);
      at.by.push(ages.by);
      if (between.by === null) at.notMet += 1;
      else if (hadAtFirstLook(cohort, attainment, child, cell)) at.hadAtFirstLook += 1;
      else at.interval += 1;
    });
  });
  return all;
}

function noIntervals(): SkillIntervals {
  return { after: [], by: [], hadAtFirstLook: 0, interval: 0, notMet: 0 };
}
