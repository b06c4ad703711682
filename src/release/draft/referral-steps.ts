import { referralSteps } from "../../tables/referral-steps";
import type { TableValue } from "../../tables/table";
import type { DraftTable } from "../release-table";
import type { Drafting } from "./drafting";
import { draftRow } from "./entries";
import { ROWS, StepCells } from "./step-cells";
import { flagShare } from "./whole-groups";

const ID = "referral-steps";
/** Estimates, which do not leave. */
const INSIDE = ["shareBy45"];

/** Table 5: steps of the referrals of the period, what is left over at each, and the 45 days. */
export function draftReferralSteps(drafting: Drafting): DraftTable {
  const { builder } = drafting;
  const { title, population, columns: all, rows, notes } = referralSteps(drafting.context);
  const columns = all.filter(({ key }) => !INSIDE.includes(key));
  const cells = new StepCells(drafting);
  const drafted = ROWS.map((step, at) => {
    const own = cells.row(step);
    const [count, of] = [own.counts["count"] as number, own.counts["of"] as number];
    if (count !== of) flagShare(drafting, `${ID}: ${step.step}`, { met: count, of });
    const values = columns.map((column): TableValue =>
      column.key === "medianDays" && !cells.mayShowMedian(step) ? null : (rows[at]?.[all.indexOf(column)] ?? null),
    );
    return draftRow(builder, columns, values, own);
  });
  return { id: ID, title, population, columns, rows: drafted, notes: [...notes, medianNote(drafting)] };
}

function medianNote({ context }: Drafting): string {
  return `The estimated share within 45 days stays in the program. Median days leave only where referrals of children of at least ${context.settings.minimumCell} families have come that far.`;
}
