import { type AgeColumns, allExactOrLater, refuseBadAges, watchedAges } from "./age-kinds";
import { type BootstrapLimits, bootstrapAgeWhenMet } from "./bootstrap";
import { type CurveRow, massAsRows, nobodyMet, stepsAsRows } from "./curve-rows";
import { kaplanMeier, type KaplanMeier } from "./kaplan-meier";
import { ageWhereShareMet, shareMetBy } from "./kaplan-meier-reading";
import { npmle } from "./npmle";
import { percentile, refuseShare, shareBy } from "./npmle-reading";

export interface AgeWhenMetRequest extends AgeColumns {
  /** shares, above 0 and at most 1, whose ages are asked for */
  readonly shares: readonly number[];
  /** ages in days at which the share met is asked for */
  readonly ages?: readonly number[];
  /** confidence level of the limits; no limits where left out */
  readonly level?: number;
  /** needed for the limits of the interval-censored estimate */
  readonly replicates?: number;
  readonly seed?: number;
}

export interface AgeOfShare {
  readonly share: number;
  /** days; null where the share is not reached */
  readonly age: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

export interface ShareAtAge {
  readonly age: number;
  /** 0 to 1; null where it cannot be told */
  readonly share: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

export interface AgeWhenMetEstimate {
  readonly method: "Kaplan-Meier" | "interval-censored" | null;
  /** why there is no estimate, or why the first share that is not reached has no age */
  readonly reason: string | null;
  readonly percentiles: readonly AgeOfShare[];
  readonly shareBy: readonly ShareAtAge[];
  readonly curve: readonly CurveRow[];
  /** of the interval-censored estimate: 0 at the optimum */
  readonly largestGradient: number | null;
}

/**
 * Age when a skill was met: Kaplan-Meier where every age is exact or later than the last look, else the
 * interval-censored estimate with bootstrap limits (METHOD.md, sections 6 and 9). All ages in days.
 *
 * @throws {RangeError} when the columns differ in length, a row is not an age, an entry stands beside intervals, a share
 * or level is out of range, or limits of intervals are asked for without `replicates` and `seed`
 */
export function estimateAgeWhenMet(request: AgeWhenMetRequest): AgeWhenMetEstimate {
  refuseBadAges(request);
  request.shares.forEach(refuseShare);
  if (request.after.length === 0) return notEstimated(request, "no child was checked for this skill", []);
  if (request.by.every((end) => end === Infinity)) {
    return notEstimated(request, "no child was seen with the skill", nobodyMet(request.after));
  }
  return allExactOrLater(request) ? fromExactAges(request) : fromIntervals(request);
}

/** Without limits asked for, the level of the log-log limits does not matter. */
const ANY_LEVEL = 0.95;

function fromExactAges(request: AgeWhenMetRequest): AgeWhenMetEstimate {
  const curve = kaplanMeier(watchedAges(request), request.level ?? ANY_LEVEL);
  if (curve.steps.length === 0) {
    return notEstimated(request, "no child was seen to meet the skill while being watched", nobodyMet(request.after));
  }
  const limits = <T extends { lower: number | null; upper: number | null }>(found: T): T =>
    request.level === undefined ? { ...found, lower: null, upper: null } : found;
  const percentiles = request.shares.map((share) => ({ share, ...limits(ageWhereShareMet(curve, share)) }));
  return {
    method: "Kaplan-Meier",
    reason: exhausted(curve) ?? notReached(percentiles, request.entry !== undefined),
    percentiles,
    shareBy: (request.ages ?? []).map((age) => ({ age, ...limits(shareMetBy(curve, age)) })),
    curve: stepsAsRows(curve),
    largestGradient: null,
  };
}

function fromIntervals(request: AgeWhenMetRequest): AgeWhenMetEstimate {
  const estimate = npmle(request.after, request.by);
  const { ageLimits, shareLimits } = limitsOf(request);
  const percentiles = request.shares.map((share, index) => ({
    share,
    age: percentile(estimate, share),
    lower: ageLimits[index]?.lower ?? null,
    upper: ageLimits[index]?.upper ?? null,
  }));
  return {
    method: "interval-censored",
    reason: notReached(percentiles, false),
    percentiles,
    shareBy: (request.ages ?? []).map((age, index) => {
      const share = shareBy(estimate, age);
      const limits = share === null ? undefined : shareLimits[index];
      return { age, share, lower: limits?.lower ?? null, upper: limits?.upper ?? null };
    }),
    curve: massAsRows(estimate),
    largestGradient: estimate.largestGradient,
  };
}

function limitsOf({ after, by, shares, ages = [], level, replicates, seed }: AgeWhenMetRequest): BootstrapLimits {
  if (level === undefined) return { ageLimits: [], shareLimits: [] };
  if (replicates === undefined || seed === undefined) {
    throw new RangeError("limits of an interval-censored estimate need `replicates` and `seed`");
  }
  return bootstrapAgeWhenMet(after, by, { shares, ages, level, replicates, seed });
}

function notEstimated(request: AgeWhenMetRequest, reason: string, curve: CurveRow[]): AgeWhenMetEstimate {
  return {
    method: null,
    reason,
    percentiles: request.shares.map((share) => ({ share, age: null, lower: null, upper: null })),
    shareBy: (request.ages ?? []).map((age) => ({ age, share: null, lower: null, upper: null })),
    curve,
    largestGradient: null,
  };
}

function exhausted({ exhaustedAtDays }: KaplanMeier): string | null {
  if (exhaustedAtDays === null) return null;
  return `every child watched at ${exhaustedAtDays} days had met it then, though others were watched later: too few were watched early for an estimate`;
}

/** Names the lowest share that has no age. With delayed entry the children seen with the skill are not all who had it. */
function notReached(percentiles: readonly AgeOfShare[], delayedEntry: boolean): string | null {
  const missing = percentiles.filter(({ age }) => age === null).map(({ share }) => share);
  if (missing.length === 0) return null;
  const lowest = Math.min(...missing);
  const part = lowest === 0.5 ? "half" : `${Number((100 * lowest).toPrecision(12))}%`;
  if (delayedEntry) return `the share met does not reach ${part} by the last check`;
  return lowest === 1
    ? "some children were never seen with the skill"
    : `fewer than ${part} of the children were ever seen with the skill`;
}
