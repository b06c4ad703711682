import { cumulativeIncidence, daysUntilTaken, shareTakenBy } from "../statistics/cumulative-incidence";
import { shareInterval } from "../statistics/share";
import type { TableContext } from "./context";
import * as sets from "./referral-steps-sets";
import { type Timed, TimedReferrals } from "./referral-steps-times";
import type { Table, TableColumn, TableValue } from "./table";

const { PLAN_WITHIN_DAYS } = sets;

const COLUMNS: readonly TableColumn[] = [
  { key: "step", label: "Step", unit: "text" },
  { key: "of", label: "Of", unit: "count" },
  { key: "count", label: "Referrals", unit: "count" },
  { key: "share", label: "Share", unit: "share" },
  { key: "lower", label: "Lower limit", unit: "share" },
  { key: "upper", label: "Upper limit", unit: "share" },
  { key: "medianDays", label: "Median days from receipt", unit: "days" },
  { key: "within45", label: "Within 45 days of receipt", unit: "count" },
  { key: "of45", label: "Of those received 46 days ago or longer", unit: "count" },
  { key: "shareBy45", label: "Estimated share within 45 days, open referrals included", unit: "share" },
];

/** Definitions alone, without a count. */
export const STEPS_NOTES: readonly string[] = [
  "Referrals made in the period on a day when the child was in the program, one row per referral whatever areas it names. A step dated after the as-of date is not yet taken, and the answer on eligibility counts from the day of the evaluation. Where no day of receipt is recorded by then, the day of referral counts.",
  "Each step has its own denominator: received of those referred, evaluated of those received, eligible of those evaluated with an answer, plan of those found eligible. Shares of a period that has just ended are low because steps are still to come.",
  `${PLAN_WITHIN_DAYS} days from receipt (34 CFR 303.310), for the evaluation and for the plan. Judged are the referrals received ${PLAN_WITHIN_DAYS + 1} days or more before the as-of date, whatever came of them: judging a quick plan sooner than a slow one would make the share too high. Day ${PLAN_WITHIN_DAYS} is in time. For the plan, referrals found not eligible are left out.`,
  `Those judged without a plan in time are in four rows: late for a reason of the family (the rule's exception for documented circumstances, shown apart), for a reason of the program, with no reason named, and closed by day ${PLAN_WITHIN_DAYS} without a plan. The rule suspends the ${PLAN_WITHIN_DAYS} days while a family cannot be reached or is not available; the records do not have such periods, so every day counts.`,
  `The estimated share uses all referrals: one that is still open counts as waiting until it was closed, or until the as-of date. For the evaluation it is Kaplan and Meier's estimate; for the plan, Aalen and Johansen's, with "not eligible" as the other ending, among those not found ineligible by day ${PLAN_WITHIN_DAYS}. It is empty where nobody was watched for ${PLAN_WITHIN_DAYS} days. Median days are the first day by which that estimate reaches half.`,
];

/** Table 5: how far referrals came, each step of those that could take it, and how long it took (METHOD.md, section 6). */
export function referralSteps(context: TableContext): Table<"referral-steps"> {
  const { all } = new TimedReferrals(context);
  const { level } = context.settings;
  return {
    id: "referral-steps",
    title: "From referral to plan",
    population: "Referrals made in the period on a day when the child was in the program",
    columns: COLUMNS,
    rows: [...ladder(all, level), ...lateRows(all, level)],
    notes: STEPS_NOTES,
  };
}

function ladder(all: readonly Timed[], level: number): TableValue[][] {
  const row = (step: string, count: sets.StepSet, of: sets.StepSet, times: TableValue[] = [null, null, null, null]) => [
    step,
    ...shareOf(countIn(all, count), countIn(all, of), level),
    ...times,
  ];
  return [
    row("referred", sets.isReferred, sets.isReferred),
    row("received", sets.isReceived, sets.isReferred),
    row("evaluated", sets.isEvaluated, sets.isReceived, timesOf(all, "evaluated")),
    row("eligible", sets.isFoundEligible, sets.isAnswered),
    row("plan", sets.isPlanned, sets.isFoundEligible, timesOf(all, "plan")),
  ];
}

function timesOf(all: readonly Timed[], step: "evaluated" | "plan"): TableValue[] {
  const [within, judged] =
    step === "plan" ? [sets.isPlannedInTime, sets.isPlanJudged] : [sets.isEvaluatedInTime, sets.isJudged];
  const curve = cumulativeIncidence(sets.waitsFor(all, step));
  return [
    daysUntilTaken(curve, 0.5),
    countIn(all, within),
    countIn(all, judged),
    shareTakenBy(curve, PLAN_WITHIN_DAYS),
  ];
}

/** Those judged without a plan in time, by what stood in its way. */
function lateRows(all: readonly Timed[], level: number): TableValue[][] {
  const late = countIn(all, sets.isWithoutPlanInTime);
  return sets.WITHOUT_PLAN_IN_TIME.map(([words, set]) => [
    words,
    ...shareOf(countIn(all, set), late, level),
    ...[null, null, null, null],
  ]);
}

function countIn(all: readonly Timed[], set: sets.StepSet): number {
  return all.filter(set).length;
}

function shareOf(count: number, of: number, level: number): TableValue[] {
  const { share, lower, upper } = shareInterval(count, of, level, "wilson");
  return [of, count, share, lower, upper];
}
