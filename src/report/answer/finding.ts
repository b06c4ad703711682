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

/** Where a table is missing: it was not asked for, or the workbook has nothing to make it from. */
export function notThere(id: FindingId, what: string): ReportFinding {
  return { id, headline: `${what}: not in this report.`, below: [WHY_NOT], picture: null };
}

const WHY_NOT = "It was not asked for, or the records have nothing to count.";
