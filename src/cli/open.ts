import { nodeInflate } from "../hosts/file/node-inflate";
import { readWorkbook, UnreadableWorkbook } from "../hosts/file/read-workbook";
import { type Decision, parseDecisions } from "../records/corrections/decisions";
import { fingerprintOf } from "../records/fingerprint";
import { readRecords, RecordsUnusable } from "../records/read-records";
import type { Records } from "../records/records";
import type { Report } from "../report/report";
import type { ReportRun } from "../report/run";
import { parseSettings, type Settings } from "../settings/settings";
import type { WorkbookIn } from "../workbook/workbook";
import { badRequest, unreadable } from "./failure";
import { readBytes, readJson } from "./files";
import { progress } from "./say";

export async function openWorkbook(book: string): Promise<WorkbookIn> {
  const bytes = readBytes(book);
  progress(`Opening ${book}`);
  try {
    return await readWorkbook(bytes, { inflate: nodeInflate });
  } catch (error) {
    if (error instanceof UnreadableWorkbook) throw unreadable(`${book}: ${error.message}`);
    throw error;
  }
}

export function settingsFrom(given: Readonly<Record<string, unknown>>): Settings {
  const parsed = parseSettings(given, 1900);
  if ("messages" in parsed) throw badRequest(parsed.messages.join("\n"));
  return parsed.settings;
}

export function decisionsFrom(file: string | null): readonly Decision[] {
  if (file === null) return [];
  const parsed = parseDecisions(readJson(file));
  if ("messages" in parsed) throw badRequest(parsed.messages.map((each) => `${file}: ${each}`).join("\n"));
  return parsed.decisions;
}

/** The records of a workbook, read once for a command, with the fingerprint of the cells that they were read from. */
export function recordsFrom(
  workbook: WorkbookIn,
  settings: Settings,
  decisions: readonly Decision[],
): { readonly records: Records; readonly fingerprint: string } {
  try {
    const records = readRecords(workbook, settings, decisions);
    return { records, fingerprint: fingerprintOf(workbook, records.input) };
  } catch (error) {
    if (error instanceof RecordsUnusable) throw unreadable(error.message);
    throw error;
  }
}

export function reportOrFail(run: ReportRun): Report {
  if ("reason" in run) throw badRequest(run.reason);
  return run.report;
}
