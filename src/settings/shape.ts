import type { CorrectionRule } from "../age/correction";
import type { Day } from "../age/day";
import type { GestationDecimals } from "../age/gestation";

/** Every choice that changes a number. Built by `parseSettings`; the names are the same on every surface. */
export interface Settings {
  /** The day the figures are true for; null only for a check that does not judge future dates. */
  readonly asOf: Day | null;
  /** First day of the period. */
  readonly from: Day | null;
  /** Rows entered after this day are left out; null: no cut-off. */
  readonly enteredBy: Day | null;
  readonly correction: CorrectionRule;
  /** Age-band edges, months, rising. */
  readonly edges: readonly number[];
  /** A look without the skill that is older than this is out of date, days. */
  readonly recheckDays: number;
  /** Confidence level of every interval, 0 to 1. */
  readonly level: number;
  /** Headings of Children to group by. */
  readonly by: readonly string[];
  readonly minimumCell: number;
  readonly floor: number;
  readonly releaseMethod: "hide" | "round" | "ranges";
  /** Whether a share of 0% or 100% of a group is only told to whoever releases it, or hidden like a small count. */
  readonly wholeGroups: "flag" | "hide";
  readonly scanMonths: number;
  readonly gestationDecimals: GestationDecimals | null;
  readonly metDates: "seen" | "exact";
  readonly seed: number;
  /** How text dates are read where their column proves nothing; null: not settled. */
  readonly monthFirst: boolean | null;
}
