import type { Day } from "../age/day";
import { NO_DAY, type Referrals } from "../records/records";
import type { TableContext } from "./context";
import { countedReferrals } from "./referrals-counted";

/** One counted referral as it stood on the as-of date. Null: not yet, or not known. */
export interface Timed {
  /** The day of referral where none is recorded by the as-of date. */
  readonly received: Day;
  readonly evaluated: Day | null;
  /** Known from the day of the evaluation on. */
  readonly isEligible: boolean | null;
  readonly plan: Day | null;
  readonly lateReason: "family" | "program" | "";
  /** The day of closing; null while open. */
  readonly closed: Day | null;
  readonly asOf: Day;
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

/** What is dated after the as-of date is not there yet: nothing that is known later changes an earlier report. */
function timedReferral(referrals: Referrals, row: number, asOf: Day): Timed {
  const dayIn = (column: Int32Array) => {
    const day = column[row] as number;
    return day === NO_DAY || day > asOf ? null : day;
  };
  const evaluated = dayIn(referrals.evaluated);
  const eligible = referrals.eligible[row] as number;
  const word = referrals.lateReason[row];
  return {
    received: dayIn(referrals.received) ?? (referrals.referred[row] as number),
    evaluated,
    isEligible: evaluated === null || eligible < 0 ? null : eligible === 1,
    plan: dayIn(referrals.plan),
    lateReason: word === "family" || word === "program" ? word : "",
    closed: dayIn(referrals.closed),
    asOf,
  };
}
