import type { Day } from "../age/day";
import { NO_DAY, type Referrals } from "../records/records";
import { kaplanMeier } from "../statistics/kaplan-meier";
import { ageWhereShareMet } from "../statistics/kaplan-meier-reading";
import type { TableContext } from "./context";
import { countedReferrals } from "./referrals-counted";

/** Days from receipt to the plan that the rule allows. Source: 34 CFR 303.310. */
export const PLAN_WITHIN_DAYS = 45;

export const LATE_WORDS = [
  ["family", "late, family reason"],
  ["program", "late, program reason"],
  ["", "late, no reason named"],
] as const;

/**
 * Where a referral stands against the 45 days: a plan in time, late, late for a reason of the family, or nothing to judge
 * (not received, found not eligible, closed in time, or still within its days).
 */
export type Timeliness = "within" | "late" | "family" | "nothing to judge";

/** One counted referral as it stood on the as-of date. Null: not yet, or not known. */
export interface Timed {
  readonly received: Day | null;
  readonly evaluated: Day | null;
  readonly isEligible: boolean | null;
  readonly plan: Day | null;
  readonly lateReason: "family" | "program" | "";
  /** The day on which it was closed, or the as-of date. */
  readonly lastOpen: Day;
  readonly timeliness: Timeliness;
}

export class TimedReferrals {
  readonly all: readonly Timed[];

  constructor({ cohort, records, settings, from, asOf }: TableContext) {
    const { referrals } = records;
    if (referrals === null) throw new RangeError("referralSteps: the workbook has no Referrals");
    const { counted } = countedReferrals(cohort, referrals, [from, asOf], settings.edges);
    this.all = counted.map(({ row }) => timedReferral(referrals, row, asOf));
  }
}

/** By Kaplan-Meier over those received, the rest waiting until closed or the as-of date; null where half never took the step. */
export function medianDays(received: readonly Timed[], step: "evaluated" | "plan"): number | null {
  const waited = received.filter((each) => each.received !== null);
  const curve = kaplanMeier(
    {
      ageDays: Float64Array.from(waited, (each) => (each[step] ?? each.lastOpen) - (each.received as Day)),
      met: Uint8Array.from(waited, (each) => (each[step] === null ? 0 : 1)),
    },
    0.95,
  );
  return ageWhereShareMet(curve, 0.5).age;
}

function timedReferral(referrals: Referrals, row: number, asOf: Day): Timed {
  const dayIn = (column: Int32Array) => (column[row] === NO_DAY ? null : (column[row] as number));
  const eligible = referrals.eligible[row] as number;
  const word = referrals.lateReason[row];
  const received = dayIn(referrals.received);
  const steps: Omit<Timed, "timeliness"> = {
    received,
    evaluated: dayIn(referrals.evaluated),
    isEligible: eligible < 0 ? null : eligible === 1,
    plan: dayIn(referrals.plan),
    lateReason: word === "family" || word === "program" ? word : "",
    lastOpen: Math.max(dayIn(referrals.closed) ?? asOf, received ?? asOf),
  };
  return { ...steps, timeliness: timelinessOf(steps) };
}

function timelinessOf({ received, isEligible, plan, lateReason, lastOpen }: Omit<Timed, "timeliness">): Timeliness {
  if (received === null || isEligible === false) return "nothing to judge";
  if ((plan ?? lastOpen) - received > PLAN_WITHIN_DAYS) return lateReason === "family" ? "family" : "late";
  return plan === null ? "nothing to judge" : "within";
}
