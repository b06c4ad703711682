import { DAYS_PER_MEAN_MONTH } from "../age/months";
import { type AgeWhenMetEstimate, estimateAgeWhenMet } from "../statistics/age-when-met";
import type { TableContext } from "./context";
import { intervalsByGroup, type SkillIntervals } from "./intervals";

export const PERCENTILES = [0.1, 0.25, 0.5, 0.75, 0.9] as const;
export const BOOTSTRAP_REPLICATES = 1000;

/** The estimated ages when met of every group and skill, each made once however many tables read it. */
export class AgeEstimates {
  private readonly intervals: readonly SkillIntervals[];
  private readonly made = new Map<number, AgeWhenMetEstimate>();

  /** @param replicates - of the limits; null: no limits are asked for */
  constructor(
    readonly context: TableContext,
    private readonly replicates: number | null = BOOTSTRAP_REPLICATES,
  ) {
    this.intervals = intervalsByGroup(context);
  }

  intervalsOf(group: number, skill: number): SkillIntervals {
    return this.intervals[group * this.context.cohort.skills.length + skill] as SkillIntervals;
  }

  /** Read at the band edges, then at the window's closing where it has one, all in days of mean-length months. */
  estimateOf(group: number, skill: number): AgeWhenMetEstimate {
    const key = group * this.context.cohort.skills.length + skill;
    const known = this.made.get(key);
    if (known) return known;
    const estimate = this.estimate(this.intervalsOf(group, skill), skill);
    this.made.set(key, estimate);
    return estimate;
  }

  private estimate(intervals: SkillIntervals, skill: number): AgeWhenMetEstimate {
    const { settings, cohort } = this.context;
    const closes = cohort.skills[skill]?.closesMonths ?? null;
    return estimateAgeWhenMet({
      after: Float64Array.from(intervals.after),
      by: Float64Array.from(intervals.by),
      shares: PERCENTILES,
      ages: [...settings.edges, ...(closes === null ? [] : [closes])].map((months) => months * DAYS_PER_MEAN_MONTH),
      ...(this.replicates === null ? {} : { level: settings.level, replicates: this.replicates, seed: settings.seed }),
    });
  }
}
