import type { Day } from "../../../src/age/day";
import { isoOf } from "../../../src/age/day";
import { strFromU8 } from "fflate";
import type { Decision } from "../../../src/records/corrections/decisions";
import { sourceOf } from "../../../src/records/fingerprint";
import { readRecords, RecordsUnusable } from "../../../src/records/read-records";
import type { Records } from "../../../src/records/records";
import { OtherWorkbook } from "../../../src/records/understanding/understand";
import {
  NO_SUCH_TABLE,
  notTheSame,
  type ReportFile,
  reportFileOfCells,
  reportFileOfText,
  sameBytes,
  tablesToMake,
} from "../../../src/report/again/made-again";
import { rowsLost } from "../../../src/report/again/rows-lost";
import { bridgeInWords } from "../../../src/report/changed/bridges";
import { bridgePicture } from "../../../src/report/changed/bridge-picture";
import { changedSheets, comparedDays } from "../../../src/report/changed/changed-sheets";
import { compareRuns, type EarlierBook } from "../../../src/report/changed/compare-runs";
import { type EarlierReport, earlierReportOf } from "../../../src/report/changed/earlier-report";
import { pictureSheet } from "../../../src/report/answer/picture";
import { reportJson } from "../../../src/report/json";
import type { EarlierProvenance, Report } from "../../../src/report/report";
import { runReport } from "../../../src/report/run";
import { reportSheets } from "../../../src/report/sheets/report-sheets";
import { VERSION } from "../../../src/report/version";
import { echoSettings, firstDayOfQuarter, parseSettings, type Settings } from "../../../src/settings/settings";
import { dayInWords } from "../../../src/words/dates";
import type { SheetOut } from "../../../src/workbook/sheets";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { previewOf, type ReportChart } from "../charts/preview";
import { Refused, reportOrRefuse } from "../refused";
import type { KeptSheets } from "../report/make-report";
import type { Compared, LastRead, MadeAgain } from "./last";

/** The file of last quarter that a person chose: the program's workbook then, or a report of it. */
type LastFile =
  { readonly kind: "workbook"; readonly workbook: WorkbookIn } | ({ readonly kind: "report" } & ReportFile);

/** What the pane may say of it. */
export async function readLast(bytes: Uint8Array, readFile: ReadFile): Promise<LastRead> {
  const file = await lastFileOf(bytes, readFile);
  if (file.kind === "workbook") return { kind: "workbook", asOf: null };
  const { settings } = file.made;
  const asOf = typeof settings.asOf === "string" ? settings.asOf : null;
  return { kind: file.tables === null ? "report workbook" : "report", asOf };
}

export type ReadFile = (bytes: Uint8Array) => Promise<WorkbookIn>;

async function lastFileOf(bytes: Uint8Array, readFile: ReadFile): Promise<LastFile> {
  if (!isZip(bytes)) {
    const file = reportFileOfText(strFromU8(bytes));
    if (file === null) throw new Refused(NO_FILE_OF_OURS);
    return { kind: "report", ...file };
  }
  const workbook = await readFile(bytes);
  const file = reportFileOfCells(workbook.sheets.flatMap(({ grid }) => grid.strings));
  return file === null ? { kind: "workbook", workbook } : { kind: "report", ...file };
}

function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b;
}

const NO_FILE_OF_OURS =
  "This file is neither an Excel workbook nor the numbers (REPORT.json) of an earlier report. Choose another file.";

/** The workbook that is held, as it was read for the later figures. */
export interface Later {
  readonly workbook: WorkbookIn;
  readonly records: Records;
  readonly settings: Settings;
  readonly decisions: readonly Decision[];
  readonly readFile: ReadFile;
}

/** Rows that the last report had and the workbook has not; a workbook of last quarter is no report, and says nothing of it. */
export async function lostSince(
  bytes: Uint8Array,
  { workbook, records, decisions, readFile }: Later,
): Promise<readonly string[]> {
  const file = await lastFileOf(bytes, readFile);
  return file.kind === "report" ? rowsLost(file.made, sourceOf(workbook, records, decisions)) : [];
}

export interface KeptComparison extends KeptSheets {
  readonly charts: readonly ReportChart[];
}

/**
 * Why figures changed since the file of last quarter.
 *
 * @param earlierAsOf - the day of the figures of a workbook; a report brings its own
 */
export async function compareWithLast(
  bytes: Uint8Array,
  earlierAsOf: Day | null,
  later: Later,
): Promise<{ readonly compared: Compared; readonly lost: readonly string[]; readonly kept: KeptComparison }> {
  const file = await lastFileOf(bytes, later.readFile);
  const { settings, decisions, workbook, records } = later;
  const earlier = file.kind === "workbook" ? bookSide(file.workbook, earlierAsOf, later) : reportSide(file);
  const found = compareRuns(earlier.run, later);
  if ("reason" in found) throw new Refused(found.reason);
  const source = sourceOf(workbook, records, decisions);
  const ask = { settings, tables: ["what-changed"] as const, source, changes: found.changes };
  const made = reportOrRefuse(runReport(records, ask));
  const report = { ...made, provenance: { ...made.provenance, earlier: earlier.provenance } };
  const lost = file.kind === "report" ? rowsLost(file.made, source) : [];
  return { ...outcome(report, settings.asOf as Day), lost };
}

interface Earlier {
  readonly run: EarlierBook | EarlierReport;
  readonly provenance: EarlierProvenance;
}

function reportSide({ made, tables }: ReportFile): Earlier {
  if (tables === null) throw new Refused(NO_COUNTS);
  const tool = { name: "Windowline" };
  const read = earlierReportOf({ tool, provenance: made, tables });
  if ("reason" in read) throw new Refused(read.reason);
  const { settings, fingerprint, version } = made;
  return { run: read.report, provenance: { from: "report", settings, fingerprint, version } };
}

const NO_COUNTS =
  "A printed report has no counts to compare with. Choose the numbers that were saved beside it (REPORT.json), or last quarter’s workbook.";

/** Read as today's workbook is, on its own day. */
function bookSide(workbook: WorkbookIn, day: Day | null, { settings: now, decisions }: Later): Earlier {
  if (day === null) throw new Refused("Give the day of last quarter’s figures, such as the last day of the quarter.");
  const settings = { ...now, asOf: day, from: firstDayOfQuarter(day) };
  const records = earlierRecords(workbook, settings, decisions);
  const { fingerprint } = sourceOf(workbook, records, decisions);
  const provenance = { settings: echoSettings(settings), fingerprint, version: VERSION };
  return { run: { records, settings }, provenance: { from: "workbook", ...provenance } };
}

function earlierRecords(workbook: WorkbookIn, settings: Settings, decisions: readonly Decision[]): Records {
  try {
    return readRecords(workbook, settings, decisions);
  } catch (error) {
    if (error instanceof RecordsUnusable || error instanceof OtherWorkbook)
      throw new Refused(`Last quarter’s workbook: ${error.message}`);
    throw error;
  }
}

function outcome(report: Report, asOf: Day) {
  const { bridges } = report.print;
  const days = comparedDays(report);
  const charts = bridges.map((bridge) => pictureSheet(bridgePicture(bridge, days)));
  const compared: Compared = {
    days,
    isFromReport: report.provenance.earlier?.from === "report",
    bridges: bridges.map((bridge, at) => ({
      sentence: `${bridgeInWords(bridge)}.`,
      chart: previewOf(charts[at] as ReportChart),
    })),
    fileName: `what-changed-${isoOf(asOf)}.xlsx`,
    label: dayInWords(asOf),
  };
  return { compared, kept: { asOf, sheets: changedSheets(report), charts } };
}

export interface AgainTools {
  readonly readFile: ReadFile;
  readonly writeFile: (sheets: readonly SheetOut[], created: Day) => Promise<Uint8Array>;
  readonly readChangelog: () => Promise<string>;
}

/** Makes the report of a file again from the workbook that is held, and says whether it is the same, to the byte. */
export async function makeAgain(
  bytes: Uint8Array,
  workbook: WorkbookIn,
  decisions: readonly Decision[],
  { readFile, writeFile, readChangelog }: AgainTools,
): Promise<MadeAgain> {
  const file = await lastFileOf(bytes, readFile);
  if (file.kind === "workbook") throw new Refused(NO_REPORT);
  const tables = tablesToMake(file.made);
  if (tables === null) throw new Refused(`The report ${NO_SUCH_TABLE}`);
  const parsed = parseSettings(file.made.settings, 1900);
  if ("messages" in parsed) throw new Refused(`Its settings cannot be read: ${parsed.messages.join(" ")}`);
  const { settings } = parsed;
  const records = readRecords(workbook, settings, decisions);
  const source = sourceOf(workbook, records, decisions);
  const report = reportOrRefuse(runReport(records, { settings, tables, source }));
  const again =
    file.tables === null
      ? await writeFile(reportSheets(report), settings.asOf as Day)
      : new TextEncoder().encode(reportJson(report));
  const isSame = sameBytes(bytes, again);
  return { isSame, lines: isSame ? [] : notTheSame(file, report, await readChangelog()) };
}

const NO_REPORT =
  "This file is a workbook of records, which says nothing of a report. Choose a report, or the numbers that were saved beside it.";
