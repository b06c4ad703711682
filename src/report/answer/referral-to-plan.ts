import { counted, listed, plural, shareOf } from "../../words/numbers";
import { PLAN_WITHIN_DAYS } from "../../tables/referral-steps-sets";
import type { Table } from "../../tables/table";
import type { Report } from "../report";
import { countAxis } from "../sheets/count-axis";
import { type Row, readTable, type TableReader } from "../sheets/read-table";
import { notThere, type ReportFinding, tableOf, withoutTable } from "./finding";
import type { BarPicture } from "./picture";

const ID = "referral-to-plan";

/** How far the referrals of the period came, and how many plans were in time. */
export function referralToPlan(report: Report): ReportFinding {
  const table = tableOf(report, "referral-steps");
  return table ? planFinding(table) : withoutTable(report, ID, "referral-steps", "From referral to plan");
}

export function planFinding(table: Table): ReportFinding {
  const read = readTable(table);
  const row = (step: string) => table.rows.find((each) => read.text(each, "step") === step);
  const count = (step: string) => numberOf(read, row(step), "count");
  const referred = count("referred");
  if (referred === 0) return notThere(ID, "From referral to plan", NONE);
  const [within, judged] = [numberOf(read, row("plan"), "within45"), numberOf(read, row("plan"), "of45")];
  const steps = STEPS.map((step) => ({ ...step, count: count(step.key), of: numberOf(read, row(step.key), "of") }));
  return {
    id: ID,
    headline: headlineOf({ within, judged, referred, plans: count("plan") }),
    below: [
      `${plural(referred, "referral", "referrals")} in the period: ${listed(steps.slice(1).map(({ done, count }) => `${counted(count)} ${done}`))}. Later steps of the newest referrals are still to come.`,
    ],
    picture: picture(steps, referred),
  };
}

const NONE = "No referral was made in the period for a child who was in the program that day.";

/** From fewer, whether plans came in time says little, and how far the referrals came says more (our choice). */
const LEAST_JUDGED = 5;

interface PlanCounts {
  readonly within: number;
  readonly judged: number;
  readonly referred: number;
  readonly plans: number;
}

function headlineOf({ within, judged, referred, plans }: PlanCounts): string {
  if (judged === 0)
    return `${plural(referred, "referral was", "referrals were")} made; it is too early to say whether a plan came within ${PLAN_WITHIN_DAYS} days.`;
  if (judged < LEAST_JUDGED)
    return `Of ${plural(referred, "referral", "referrals")}, ${counted(plans)} ${plans === 1 ? "has" : "have"} a plan so far. A plan was due for ${counted(judged)}, and ${counted(within)} came within ${PLAN_WITHIN_DAYS} days.`;
  const share = shareOf(within, judged);
  const percent = share.includes("(") ? ` ${share.slice(share.indexOf("("))}` : "";
  return `Of ${plural(judged, "plan", "plans")} due, ${counted(within)}${percent} ${within === 1 ? "was" : "were"} in place within ${PLAN_WITHIN_DAYS} days.`;
}

function numberOf(read: TableReader, row: Row | undefined, key: string): number {
  return (row && read.number(row, key)) ?? 0;
}

const STEPS = [
  { key: "referred", label: "Referred", done: "referred" },
  { key: "received", label: "Received", done: "received" },
  { key: "evaluated", label: "Evaluated", done: "evaluated" },
  { key: "eligible", label: "Found eligible", done: "found eligible" },
  { key: "plan", label: "Plan in place", done: "with a plan in place" },
] as const;

interface Step {
  readonly label: string;
  readonly count: number;
  readonly of: number;
}

/** One bar that narrows: each step is as long as those who took it, with those who did not behind it. */
function picture(steps: readonly Step[], referred: number): BarPicture {
  const bars = steps.map(({ label, count, of }, at) => ({
    label: at === 0 ? `${label}: ${counted(count)}` : `${label}: ${counted(count)} of ${counted(of)}`,
    values: [count, Math.max(0, of - count)],
  }));
  return {
    kind: "bar stacked",
    title: "From referral to plan",
    altText: `A bar that narrows from step to step. ${bars.map(({ label }) => label).join("; ")}.`,
    parts: [
      { name: "Took the step", look: "solid" },
      { name: "Did not, or not yet", look: "hollow" },
    ],
    bars,
    x: { title: "", reversed: true },
    y: { ...countAxis("", referred), hidden: true },
    legend: "none",
  };
}
