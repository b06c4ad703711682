import { ENDING, type Waits } from "../statistics/cumulative-incidence";
import type { Timed } from "./referral-steps-times";

/** Days from receipt that the rule allows for the evaluation and for the plan. Source: 34 CFR 303.310. */
export const PLAN_WITHIN_DAYS = 45;

/** A set of the referrals of the period: what is counted is declared here, once. */
export type StepSet = (referral: Timed) => boolean;

export const isReferred: StepSet = () => true;
export const isReceived: StepSet = () => true;
export const isEvaluated: StepSet = ({ evaluated }) => evaluated !== null;
export const isAnswered: StepSet = ({ isEligible }) => isEligible !== null;
export const isFoundEligible: StepSet = ({ isEligible }) => isEligible === true;
export const isPlanned: StepSet = (referral) => isFoundEligible(referral) && referral.plan !== null;

/** Its 45 days were over before the as-of date, whatever came of it: a quick step is judged no sooner than a slow one. */
export const isJudged: StepSet = ({ received, asOf }) => asOf - received > PLAN_WITHIN_DAYS;
export const isEvaluatedInTime: StepSet = (referral) => isJudged(referral) && isInTime(referral, "evaluated");

/** No plan is due where the child was found not eligible. */
export const isPlanJudged: StepSet = (referral) => isJudged(referral) && referral.isEligible !== false;
export const isPlannedInTime: StepSet = (referral) => isPlanJudged(referral) && isInTime(referral, "plan");
export const isWithoutPlanInTime: StepSet = (referral) => isPlanJudged(referral) && !isInTime(referral, "plan");

const isClosedInTime: StepSet = (referral) =>
  isWithoutPlanInTime(referral) && referral.closed !== null && referral.closed - referral.received <= PLAN_WITHIN_DAYS;

const isLateFor =
  (reason: Timed["lateReason"]): StepSet =>
  (referral) =>
    isWithoutPlanInTime(referral) && !isClosedInTime(referral) && referral.lateReason === reason;

/** What stood in the way of a plan in time; the sets share no referral and together are all judged without one. */
export const WITHOUT_PLAN_IN_TIME: readonly (readonly [words: string, set: StepSet])[] = [
  ["late, family reason", isLateFor("family")],
  ["late, program reason", isLateFor("program")],
  ["late, no reason named", isLateFor("")],
  [`closed before day ${PLAN_WITHIN_DAYS}`, isClosedInTime],
];

/** Taken by day 45, and not after the referral was closed: a closing ends the wait. */
function isInTime(referral: Timed, step: "evaluated" | "plan"): boolean {
  const day = dayWhileOpen(referral, step);
  return day !== null && day - referral.received <= PLAN_WITHIN_DAYS;
}

/** How long each referral waited for a step, and how the wait ended. */
export function waitsFor(all: readonly Timed[], step: "evaluated" | "plan"): Waits {
  const waits = all.map((referral) => {
    const taken = dayWhileOpen(referral, step);
    const refused = step === "plan" && referral.isEligible === false ? dayWhileOpen(referral, "evaluated") : null;
    if (refused !== null && (taken === null || refused <= taken)) return { day: refused, ending: ENDING.needless };
    if (taken !== null) return { day: taken, ending: ENDING.step };
    return { day: Math.max(referral.closed ?? referral.asOf, referral.received), ending: ENDING.none };
  });
  return {
    days: Float64Array.from(waits, ({ day }, at) => day - (all[at] as Timed).received),
    ending: Uint8Array.from(waits, ({ ending }) => ending),
  };
}

/** The day of a step that was taken before the referral was closed, or on the day of closing. */
function dayWhileOpen(referral: Timed, step: "evaluated" | "plan"): number | null {
  const day = referral[step];
  return day !== null && (referral.closed === null || day <= referral.closed) ? day : null;
}
