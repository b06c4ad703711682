import { counted, plural } from "../../words/numbers";
import { quarterInWords } from "../../words/dates";
import type { Report } from "../report";
import { ALL_SKILLS, readTable } from "../sheets/read-table";
import { tableOf } from "./finding";

/** What the figures cannot settle and a person has to: losses, rows left out, cells to check, a quarter not yet complete. */
export function needsAPerson(report: Report): readonly string[] {
  const lines = [lost(report), late(report), leftOut(report), toCheck(report), provisional(report)].filter(
    (line) => line !== null,
  );
  return lines.length > 0 ? lines : [NOTHING];
}

const NOTHING = "Nothing today: no skill is recorded as lost, every row was used, and the quarter is complete.";

function lost(report: Report): string | null {
  const table = tableOf(report, "met-by-band");
  if (!table) return null;
  const read = readTable(table);
  const count = read.sum(
    table.rows.filter((row) => read.text(row, "skill") === ALL_SKILLS),
    "lost",
  );
  if (count === 0) return null;
  const skills = plural(count, "skill is lost or possibly lost", "skills are lost or possibly lost");
  return `${skills}. The caseload list names each child. Talk with the child's clinician without waiting.`;
}

function late(report: Report): string | null {
  const table = tableOf(report, "referral-steps");
  if (!table) return null;
  const read = readTable(table);
  const rows = table.rows.filter((row) => /^late, (program reason|no reason named)/.test(read.text(row, "step")));
  const count = read.sum(rows, "count");
  if (count === 0) return null;
  return `${plural(count, "plan came", "plans came")} late, or not at all, with no reason of the family on record.`;
}

function leftOut({ input }: Report): string | null {
  const reasons = new Map<string, number>();
  for (const { leftOut } of input)
    for (const [reason, count] of Object.entries(leftOut)) reasons.set(reason, (reasons.get(reason) ?? 0) + count);
  const total = [...reasons.values()].reduce((sum, count) => sum + count, 0);
  if (total === 0) return null;
  const said = [...reasons].sort((a, b) => b[1] - a[1]).map(([reason, count]) => `${reason} (${counted(count)})`);
  const shown = said.slice(0, MOST_REASONS).join(", ") + (said.length > MOST_REASONS ? " and other reasons" : "");
  return `${plural(total, "row was", "rows were")} left out of the figures: ${shown}.`;
}

const MOST_REASONS = 4;

function toCheck({ findings }: Report): string | null {
  const count = findings.filter(({ severity }) => severity === "warning").length;
  if (count === 0) return null;
  return `${plural(count, "cell was used and needs", "cells were used and need")} checking. The data workbook lists them under “Problems found”.`;
}

/** Whether observations of the last quarter are still to come, as the trend's first note says. */
function provisional(report: Report): string | null {
  const table = tableOf(report, "trend");
  if (!table) return null;
  const read = readTable(table);
  const last = table.rows.findLast((row) => read.flag(row, "provisional"));
  if (!last) return null;
  return `${quarterInWords(read.text(last, "quarter"))} is provisional: some of its observations are still to be entered.`;
}
