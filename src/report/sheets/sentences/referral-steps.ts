import type { Table } from "../../../tables/table";
import { plural, shareOf } from "../../../words/numbers";
import { planFinding } from "../../answer/referral-to-plan";
import { type Row, readTable, type TableReader } from "../read-table";

export function referralStepsSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const row = (step: string) => table.rows.find((each) => read.text(each, "step") === step);
  const { headline, below, picture } = planFinding(table);
  if (!picture) return below.map((line) => line.replace(/\.$/, ""));
  return [
    headline.replace(/\.$/, ""),
    ...familyReasons(read, row("late, family reason")),
    ladder(read, row),
    ...waits(read, row("evaluated"), row("plan")),
  ];
}

function familyReasons(read: TableReader, row: Row | undefined): string[] {
  const family = row ? (read.number(row, "count") ?? 0) : 0;
  if (family === 0) return [];
  return [
    `Of the others, ${plural(family, "is", "are")} late for a reason of the family, which is the exception of the rule.`,
  ];
}

function ladder(read: TableReader, row: (step: string) => Row | undefined): string {
  const step = (name: string) => {
    const found = row(name);
    return shareOf((found && read.number(found, "count")) ?? 0, (found && read.number(found, "of")) ?? 0);
  };
  return `Received: ${step("received")} referred. Evaluated: ${step("evaluated")} received. Found eligible: ${step("eligible")} evaluated with an answer. Plan in place: ${step("plan")} eligible. Later steps of the newest referrals are still to come.`;
}

function waits(read: TableReader, evaluated: Row | undefined, plan: Row | undefined): string[] {
  const days = [
    { what: "to the evaluation", value: evaluated ? read.number(evaluated, "medianDays") : null },
    { what: "to the plan", value: plan ? read.number(plan, "medianDays") : null },
  ].flatMap(({ what, value }) => (value === null ? [] : [`${Math.round(value)} days ${what}`]));
  return days.length === 0 ? [] : [`Half took no longer than ${days.join(", and ")}, open referrals included.`];
}
