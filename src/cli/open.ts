import { type Decision, parseDecisions } from "../records/corrections/decisions";
import { type Source, sourceOf } from "../records/fingerprint";
import { readRecords, RecordsUnusable } from "../records/read-records";
import type { Records } from "../records/records";
import type { Report } from "../report/report";
import type { ReportRun } from "../report/run";
import { fromFile } from "../records/understanding/file";
import { OtherWorkbook, refuseOtherWorkbook } from "../records/understanding/understand";
import { parseSettings, type Settings } from "../settings/settings";
import type { WorkbookIn } from "../workbook/workbook";
import { badRequest, type CommandFailure, unreadable } from "./failure";
import { filesOf } from "./books";
import { readJson } from "./files";

/** What a person settled in files: settings, understanding and corrections. */
export interface Settled {
  readonly settings: Readonly<Record<string, unknown>>;
  readonly decisions: readonly Decision[];
}

/** The files of a request that say how its workbook is read. */
export interface SettledFiles {
  readonly understanding: string | null;
  readonly decisions: string | null;
}

export function settledFrom({ understanding, decisions }: SettledFiles): Settled {
  const own = decisionsFrom(decisions);
  if (understanding === null) return { settings: {}, decisions: own };
  const parsed = fromFile(readJson(understanding));
  if ("messages" in parsed) throw badRequest(parsed.messages.map((each) => `${understanding}: ${each}`).join("\n"));
  return { settings: parsed.settings, decisions: [...parsed.decisions, ...own] };
}

/** Every file of a request that is only read. */
export function inputsOf(request: SettledFiles & { readonly books: readonly string[] }): string[] {
  const { books, understanding, decisions } = request;
  return [...filesOf(books), understanding, decisions].filter((file) => file !== null);
}

/**
 * @param settled - settings of an understanding file: what was asked for on the command line comes first
 */
export function settingsFrom(
  asked: Readonly<Record<string, unknown>>,
  settled: Readonly<Record<string, unknown>> = {},
): Settings {
  refuseOtherDates(asked);
  const given = { ...settled, ...asked };
  const parsed = parseSettings(given, 1900);
  if ("messages" in parsed) throw badRequest(parsed.messages.join("\n"));
  return parsed.settings;
}

/** A date as it is written by hand, answered with the form that is asked for. */
function refuseOtherDates(asked: Readonly<Record<string, unknown>>): void {
  for (const [name, value] of Object.entries(asked)) {
    const match = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/.exec(typeof value === "string" ? value.trim() : "");
    if (!match) continue;
    const [, first, second, year] = match.map(Number) as [number, number, number, number];
    const [month, day] = first > 12 ? [second, first] : [first, second];
    const iso = `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
    throw badRequest(`Give --${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)} as ${iso}.`);
  }
}

export function decisionsFrom(file: string | null): readonly Decision[] {
  if (file === null) return [];
  const parsed = parseDecisions(readJson(file));
  if ("messages" in parsed) throw badRequest(parsed.messages.map((each) => `${file}: ${each}`).join("\n"));
  return parsed.decisions;
}

/** The records of a workbook, read once for a command, with what tells the workbook apart. */
export function recordsFrom(
  workbook: WorkbookIn,
  settings: Settings,
  decisions: readonly Decision[],
): { readonly records: Records; readonly source: Source } {
  refuseOther(workbook, decisions);
  try {
    const records = readRecords(workbook, settings, decisions);
    return { records, source: sourceOf(workbook, records, decisions) };
  } catch (error) {
    if (error instanceof RecordsUnusable) throw unusable(error.message);
    throw error;
  }
}

/** Says in a sentence that an understanding file is about another workbook. */
export function refuseOther(workbook: WorkbookIn, decisions: readonly Decision[]): void {
  const sheets = decisions.flatMap((each) => (each.kind === "sheet" && !each.revoked ? [each] : []));
  try {
    refuseOtherWorkbook(workbook, sheets);
  } catch (error) {
    if (error instanceof OtherWorkbook) throw badRequest(error.message);
    throw error;
  }
}

/** What keeps the records from being read, and where to look next. */
export function unusable(message: string): CommandFailure {
  return unreadable(
    `${message} To see how each sheet is understood, and to settle it: windowline understand BOOK.xlsx --out BOOK.windowline.json`,
  );
}

export function reportOrFail(run: ReportRun): Report {
  if ("reason" in run) throw badRequest(run.reason);
  return run.report;
}
