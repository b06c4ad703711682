import { shareInterval } from "../statistics/share";
import type { TableContext } from "./context";
import { LATE_WORDS, medianDays, PLAN_WITHIN_DAYS, type Timed, TimedReferrals } from "./referral-steps-times";
import type { Table, TableColumn, TableValue } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "step", label: "Step", unit: "text" },
  { key: "of", label: "Of", unit: "count" },
  { key: "count", label: "Referrals", unit: "count" },
  { key: "share", label: "Share", unit: "share" },
  { key: "lower", label: "Lower limit", unit: "share" },
  { key: "upper", label: "Upper limit", unit: "share" },
  { key: "medianDays", label: "Median days from receipt", unit: "days" },
  { key: "within45", label: "Plan within 45 days", unit: "count" },
  { key: "of45", label: "Of those whose 45 days can be judged", unit: "count" },
];

const NOTES: readonly string[] = [
  "Referrals made in the period on a day on which the child was followed, one row a referral whatever areas it names. Steps after the as-of date are not yet taken.",
  "Each step has its own denominator: received of those referred, evaluated of those received, eligible of those evaluated whose answer is recorded, plan of those found eligible. Shares of a period that has just ended are low because steps are still to come.",
  "Median days are from receipt, by Kaplan-Meier: a referral without the step counts as waiting until it was closed, or until the as-of date; it is not dropped. No median where fewer than half have come that far. For the plan, referrals found not eligible are left out, since no plan is due.",
  `45 days from receipt (34 CFR 303.310): judged are referrals not found ineligible that have a plan, or waited more than ${PLAN_WITHIN_DAYS} days open without one. The ${PLAN_WITHIN_DAYS}th day is in time.`,
  "Late for a reason of the family is the rule's exception for documented family circumstances: it is not among the judged, and stands in a row of its own. Late for a reason of the program, or with none named, is late.",
];

/** Table 5: how far referrals came, each step of those that could take it, and how long to the plan (METHOD.md, section 6). */
export function referralSteps(context: TableContext): Table<"referral-steps"> {
  const timed = new TimedReferrals(context);
  const { level } = context.settings;
  return {
    id: "referral-steps",
    title: "How far referrals came, and how long they took",
    population: "Referrals made in the period on a day on which the child was followed",
    columns: COLUMNS,
    rows: [...ladder(timed, level), ...lateRows(timed, level)],
    notes: NOTES,
  };
}

function ladder({ all }: TimedReferrals, level: number): TableValue[][] {
  const received = all.filter((each) => each.received !== null);
  const evaluated = received.filter((each) => each.evaluated !== null);
  const answered = evaluated.filter((each) => each.isEligible !== null);
  const eligible = answered.filter((each) => each.isEligible === true);
  const planned = eligible.filter((each) => each.plan !== null);
  const judged = all.filter((each) => each.timeliness === "within" || each.timeliness === "late");
  const due = received.filter((each) => each.isEligible !== false);
  const within = judged.filter((each) => each.timeliness === "within").length;
  const none = [null, null, null];
  return [
    ["referred", ...shareOf(all.length, all.length, level), ...none],
    ["received", ...shareOf(received.length, all.length, level), ...none],
    ["evaluated", ...shareOf(evaluated.length, received.length, level), medianDays(received, "evaluated"), null, null],
    ["eligible", ...shareOf(eligible.length, answered.length, level), ...none],
    ["plan", ...shareOf(planned.length, eligible.length, level), medianDays(due, "plan"), within, judged.length],
  ];
}

/** Those late, by the reason that is recorded. */
function lateRows({ all }: TimedReferrals, level: number): TableValue[][] {
  const late = all.filter((each) => each.timeliness === "late" || each.timeliness === "family");
  const count = (reason: Timed["lateReason"]) => late.filter((each) => each.lateReason === reason).length;
  return LATE_WORDS.map(([reason, words]) => [words, ...shareOf(count(reason), late.length, level), null, null, null]);
}

function shareOf(count: number, of: number, level: number): TableValue[] {
  const { share, lower, upper } = shareInterval(count, of, level, "wilson");
  return [of, count, share, lower, upper];
}
