import type { Day } from "../../age/day";
import type { SeenSign } from "./open-signs";

/** One thing to look at, and why. Lower tiers come first. */
export interface PlanItem {
  readonly child: number;
  /** Null for a sign, which belongs to no skill. */
  readonly skill: number | null;
  readonly why: PlanReason;
  readonly sign: SeenSign | null;
  /** Null where it was never looked for. */
  readonly lastLook: Day | null;
  /** True where the next report would know nothing about it without another look. */
  readonly narrows: boolean;
  /** Order within a tier, lower first. */
  readonly rank: number;
}

/** Safety first, then what the next report would not know. */
export const PLAN_TIERS = {
  sign: 1,
  lost: 1,
  "to confirm": 1,
  "past window": 2,
  "not known": 3,
  "different results": 3,
  "not met": 4,
  "not assessed": 4,
} as const;

export type PlanReason = keyof typeof PLAN_TIERS;

export function tierOf({ why }: PlanItem): number {
  return PLAN_TIERS[why];
}
