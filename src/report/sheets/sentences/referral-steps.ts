import { PLAN_WITHIN_DAYS } from "../../../tables/referral-steps-sets";
import type { Table } from "../../../tables/table";
import { type Row, readTable, type TableReader } from "../read-table";
import { percentOf, plural } from "../../../words/numbers";

export function referralStepsSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const row = (step: string) => table.rows.find((each) => read.text(each, "step") === step);
  const [referred, plan] = [row("referred"), row("plan")];
  const all = referred ? (read.number(referred, "count") ?? 0) : 0;
  if (all === 0 || !plan) return ["No referral was made in the period on a day on which the child was followed"];
  return [
    planInTime(read, plan),
    ...familyReasons(read, row("late, family reason")),
    ladder(read, all, row),
    ...medians(read, row("evaluated"), plan),
  ];
}

function planInTime(read: TableReader, plan: Row): string {
  const [within, judged] = [read.number(plan, "within45") ?? 0, read.number(plan, "of45") ?? 0];
  if (judged === 0)
    return `No referral of the period was received long enough ago to judge its ${PLAN_WITHIN_DAYS} days`;
  return `Of the referrals received long enough ago to judge, ${percentOf(within, judged)} had a plan within ${PLAN_WITHIN_DAYS} days of receipt`;
}

function familyReasons(read: TableReader, row: Row | undefined): string[] {
  const family = row ? (read.number(row, "count") ?? 0) : 0;
  return [
    `Of the others, ${plural(family, "is", "are")} late for a reason of the family, which is the exception of the rule.`,
  ];
}

function ladder(read: TableReader, all: number, row: (step: string) => Row | undefined): string {
  const step = (name: string) => {
    const found = row(name);
    return percentOf((found && read.number(found, "count")) ?? 0, (found && read.number(found, "of")) ?? 0);
  };
  return `Of ${plural(all, "referral", "referrals")}, ${step("received")} were received; of those, ${step("evaluated")} are evaluated; of those with an answer, ${step("eligible")} were found eligible; of those, ${step("plan")} have a plan. The latest referrals still have steps to come.`;
}

function medians(read: TableReader, evaluated: Row | undefined, plan: Row): string[] {
  const days = [
    { what: "the evaluation", value: evaluated ? read.number(evaluated, "medianDays") : null },
    { what: "the plan", value: read.number(plan, "medianDays") },
  ].flatMap(({ what, value }) => (value === null ? [] : [`${Math.round(value)} days to ${what}`]));
  return days.length === 0 ? [] : [`Median from receipt, those still waiting counted as waiting: ${days.join(", ")}.`];
}
