import type { Decision } from "../../src/records/corrections/decisions";
import { sourceOf } from "../../src/records/fingerprint";
import { readRecords } from "../../src/records/read-records";
import type { Report } from "../../src/report/report";
import { runReport } from "../../src/report/run";
import type { Settings } from "../../src/settings/settings";
import type { TableId } from "../../src/tables/table";
import type { WorkbookIn } from "../../src/workbook/workbook";

/** The report of a workbook that one can be made of. */
export function reportOf(
  workbook: WorkbookIn,
  settings: Settings,
  tables: readonly TableId[] | null,
  decisions: readonly Decision[] = [],
): Report {
  const records = readRecords(workbook, settings, decisions);
  const run = runReport(records, { settings, tables, source: sourceOf(workbook, records, decisions) });
  if ("reason" in run) throw new Error(run.reason);
  return run.report;
}
