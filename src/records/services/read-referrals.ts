import type { Day } from "../../age/day";
import type { Counted } from "../headings/count-blocks";
import { NO_DAY, type Referrals } from "../records";
import {
  dateRefusal,
  laterStep,
  LEFT_BY_CHOICE,
  readServiceRows,
  type Refusal,
  type ServiceContext,
  type ServiceRow,
} from "./service-rows";
import { type ReferralRow, REFERRALS, referralRow } from "../tables/referrals";
import { oneSpelling } from "../cells/words";
import { LEAVE_OUT } from "../corrections/settled";
import { areasNamed } from "./area-words";

interface Steps {
  readonly received: Day | null;
  readonly evaluated: Day | null;
  readonly plan: Day | null;
  readonly closed: Day | null;
}

/** Reads Referrals: steps that come before the referral, or after the as-of date, stand as not taken. */
export function readReferrals(context: ServiceContext, blocks: readonly Counted[]): Referrals {
  const rows = readServiceRows(context, blocks, REFERRALS, referralRow, (row) => refuse(context, row));
  const steps = rows.map((row) => stepsOf(context, row));
  const days = (of: (each: Steps) => Day | null) => Int32Array.from(steps, (each) => of(each) ?? NO_DAY);
  return {
    child: Int32Array.from(rows, (row) => row.child),
    referred: Int32Array.from(rows, (row) => row.value.referred),
    areas: rows.map((row) => areasOf(context, row.value).flatMap((area) => area ?? [])),
    reason: rows.map((row) => row.value.reason),
    from: oneSpelling(rows.map((row) => row.value.from)),
    to: oneSpelling(rows.map((row) => row.value.to)),
    received: days((each) => each.received),
    receivedBlank: rows.filter(({ value }) => value.received === null).length,
    evaluated: days((each) => each.evaluated),
    eligible: Int8Array.from(rows, (row) => yesNo(row.value.eligible)),
    plan: days((each) => each.plan),
    lateReason: rows.map((row) => row.value.lateReason ?? ""),
    closed: days((each) => each.closed),
  };
}

/** 1 yes, 0 no, -1 blank. */
export function yesNo(word: "yes" | "no" | null): number {
  return word === null ? -1 : word === "yes" ? 1 : 0;
}

function refuse(context: ServiceContext, row: ServiceRow<ReferralRow>): Refusal {
  const areas = areasOf(context, row.value);
  if (areas.includes(LEAVE_OUT)) return [LEFT_BY_CHOICE, "area"];
  if (areas.length === 0 || areas.includes(null)) return ["area-unknown", "area"];
  const { referred, evaluated } = row.value;
  if (evaluated !== null && evaluated < referred) return ["evaluated-before-referred", "evaluated"];
  return dateRefusal(context, row, row.value.referred, "referred");
}

function areasOf({ area, reading }: ServiceContext, row: ReferralRow): (string | null)[] {
  return areasNamed(row.area, area, (key) => reading.decided.area(key));
}

function stepsOf(context: ServiceContext, row: ServiceRow<ReferralRow>): Steps {
  const { referred, received, evaluated, plan, closed } = row.value;
  const step = (day: Day | null, column: string) => laterStep(context, row, referred, day, column);
  const steps = {
    // blank, or only after the as-of date: the day of referral
    received: step(received, "received") ?? referred,
    evaluated: step(evaluated, "evaluated"),
    plan: step(plan, "plan"),
    closed: step(closed, "closed"),
  };
  if (steps.plan !== null && steps.evaluated !== null && steps.plan < steps.evaluated)
    row.remark("plan-before-evaluation", "plan");
  if (!context.stays.covers(row.child, referred)) row.remark("outside-enrolment", "referred");
  return steps;
}
