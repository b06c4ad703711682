import { TABLE_CATALOGUE } from "../../tables/catalogue";
import type { TableId } from "../../tables/table";
import type { Report } from "../report";
import type { Table } from "../../tables/table";
import type { Picture } from "./picture";

/** One of the five things that the first page says, in a sentence and a small picture. */
export interface ReportFinding {
  readonly id: FindingId;
  /** The sentence, as a manager would say it aloud, with its counts. */
  readonly headline: string;
  /** What qualifies it, in a line or two. */
  readonly below: readonly string[];
  /** Null where there is nothing to draw; the sentences then say why. */
  readonly picture: Picture | null;
}

export type FindingId = "expected-by-now" | "reached-by-age" | "referral-to-plan" | "clusters" | "outcome-levels";

/** The table with its rows; null where it was not made, or is empty. */
export function tableOf(report: Report, id: string): Table | null {
  const table = report.tables.find((each) => each.id === id);
  return table && table.rows.length > 0 ? table : null;
}

/** Where a table that a finding is made of is missing or has no rows, and which of the two. */
export function withoutTable(report: Report, id: FindingId, table: TableId, what: string): ReportFinding {
  return notThere(id, what, whyNot(report, table));
}

export function notThere(id: FindingId, what: string, why: string): ReportFinding {
  return { id, headline: `${what}: not in this report.`, below: [why], picture: null };
}

function whyNot({ tables, input }: Report, id: TableId): string {
  const { needs } = TABLE_CATALOGUE[id];
  const rows = input.filter(({ table }) => table.toLowerCase() === needs);
  if (needs !== null && rows.length === 0) return `The workbook has no table of ${needs}.`;
  if (!tables.some((table) => table.id === id)) return "You did not ask for its table.";
  const isUsed = needs === null || rows.some(({ used }) => used > 0);
  return isUsed ? "The records have nothing to count for it." : `None of the rows of ${needs} could be used.`;
}
