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
import { counted, plural } from "../../words/numbers";
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
  listNotReceived(context, rows);
  const days = (of: (each: Steps) => Day | null) => Int32Array.from(steps, (each) => of(each) ?? NO_DAY);
  return {
    child: Int32Array.from(rows, (row) => row.child),
    referred: Int32Array.from(rows, (row) => row.value.referred),
    areas: rows.map((row) => areasOf(context, row.value).flatMap((area) => area ?? [])),
    reason: rows.map((row) => row.value.reason),
    from: oneSpelling(rows.map((row) => row.value.from)),
    to: oneSpelling(rows.map((row) => row.value.to)),
    received: days((each) => each.received),
    evaluated: days((each) => each.evaluated),
    eligible: Int8Array.from(rows, (row) => yesNo(row.value.eligible)),
    plan: days((each) => each.plan),
    lateReason: rows.map((row) => row.value.lateReason ?? ""),
    closed: days((each) => each.closed),
  };
}

/** A blank Received is read as the day of referral: said once, with its count. */
function listNotReceived({ reading }: ServiceContext, rows: readonly ServiceRow<ReferralRow>[]): void {
  const blank = rows.filter(({ value }) => value.received === null);
  const first = blank[0];
  if (!first) return;
  const advice = `${plural(blank.length, "referral has", "referrals have")} no day under Received, of ${counted(rows.length)}: each counts as received on the day it was made. Fill in the day where another one is known.`;
  const { block } = first;
  const column = block.columns.get("received");
  const { top, left, right, bottom } = block.range;
  const range =
    column === undefined
      ? { top, bottom: block.firstRow - 1, left, right }
      : { top: block.firstRow, bottom, left: column, right: column };
  reading.findings.range("received-blank", block, range, { advice });
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
