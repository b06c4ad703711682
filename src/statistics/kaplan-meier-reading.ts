import type { KaplanMeier, KaplanMeierStep } from "./kaplan-meier";
import { NO_MASS, SHARE_REACHED_WITHIN, refuseShare } from "./npmle-reading";

/** Share met, 0 to 1, with limits; null where it cannot be told. */
export interface ShareWithLimits {
  readonly share: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

export interface AgeWithLimits {
  readonly age: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * First age at which the share met reaches `share`, and the first ages at which the upper and the lower limit of the
 * share met reach it: the lower and upper limit of the age. Null where that never happens.
 */
export function ageWhereShareMet(curve: KaplanMeier, share: number): AgeWithLimits {
  refuseShare(share);
  const wanted = share - SHARE_REACHED_WITHIN;
  const firstAge = (reaches: (step: KaplanMeierStep) => boolean) => curve.steps.find(reaches)?.ageDays ?? null;
  return {
    age: firstAge((step) => 1 - step.survival >= wanted),
    lower: firstAge((step) => step.lower !== null && 1 - step.lower >= wanted),
    upper: firstAge((step) => step.upper !== null && 1 - step.upper >= wanted),
  };
}

/** Share met by an age; after the last day anybody was watched it is null, or 1 where nobody was without the skill. */
export function shareMetBy(curve: KaplanMeier, ageDays: number): ShareWithLimits {
  if (Number.isNaN(ageDays)) throw new RangeError("shareMetBy: the age is not a number");
  const last = curve.steps.at(-1);
  if (last === undefined) return { share: null, lower: null, upper: null };
  if (ageDays > curve.lastAgeDays && last.survival > NO_MASS) return { share: null, lower: null, upper: null };
  const step = curve.steps.findLast((each) => each.ageDays <= ageDays);
  if (step === undefined) return { share: 0, lower: null, upper: null };
  return {
    share: 1 - step.survival,
    lower: step.upper === null ? null : 1 - step.upper,
    upper: step.lower === null ? null : 1 - step.lower,
  };
}
