import { writeWorkbook } from "../hosts/file/write-workbook";
import { RecordsUnusable } from "../records/read-records";
import { changedSheets } from "../report/changed/changed-sheets";
import { compareRuns, type EarlierBook, type LaterBook } from "../report/changed/compare-runs";
import { type EarlierReport, earlierReportOf } from "../report/changed/earlier-report";
import { reportJson } from "../report/json";
import type { EarlierProvenance, Report } from "../report/report";
import { runReport } from "../report/run";
import { sentencesOf } from "../report/sheets/sentences/sentences";
import { VERSION } from "../report/version";
import { echoSettings, type Settings } from "../settings/settings";
import { TABLE_CATALOGUE, TABLE_IDS, tableIdOf } from "../tables/catalogue";
import type { TableId } from "../tables/table";
import { dayInWords } from "../words/dates";
import { badRequest, EXIT, unreadable } from "./failure";
import { checkOutputs, isFolder, readBytes, readJson, writeWhole } from "./files";
import { filesOf, openBooks } from "./books";
import { inputsOf, recordsFrom, reportOrFail, settingsFrom, settledFrom } from "./open";
import type { RequestOf } from "./request";
import { print, progress } from "./say";

/** Says why the figures of two runs differ, cause by cause. */
export async function runChangedCommand(request: RequestOf<"changed">): Promise<number> {
  settingsFrom(request.settings);
  const tables = tablesOf(request.tables);
  const { settings: settled, decisions } = settledFrom(request);
  const settings = settingsFrom(request.settings, settled);
  if (settings.asOf === null)
    throw badRequest("Say the day of the later figures: add --as-of, such as --as-of 2026-09-30.");
  const outputs = [request.out, request.json].filter((file) => file !== null);
  checkOutputs(inputsAll(request), outputs);
  const earlier = await earlierFrom(request);
  const workbook = await openBooks(request.books);
  progress("Reading the records");
  const { records, source } = recordsFrom(workbook, settings, decisions);
  progress("Following each count");
  const changes = compared(earlier.run, { workbook, records, settings, decisions }, tables);
  const made = reportOrFail(runReport(records, { settings, tables, source, changes, onStep: progress }));
  const report = { ...made, provenance: { ...made.provenance, earlier: earlier.provenance } };
  if (request.out !== null) writeWhole(request.out, writeWorkbook(changedSheets(report), { created: settings.asOf }));
  if (request.json !== null) writeWhole(request.json, reportJson(report));
  print(summaryOf(report, earlier, settings, outputs).join("\n"));
  return EXIT.done;
}

interface Earlier {
  readonly run: EarlierBook | EarlierReport;
  readonly provenance: EarlierProvenance;
}

async function earlierFrom(request: RequestOf<"changed">): Promise<Earlier> {
  return isJson(request.earlier) ? earlierReport(request) : earlierBook(request);
}

function isJson(file: string): boolean {
  return !isFolder(file) && readBytes(file).find((byte) => byte > 0x20) === "{".charCodeAt(0);
}

/** A report brings its own settings: others would not be those that its figures were made with. */
function earlierReport({ earlier: file, ...request }: RequestOf<"changed">): Earlier {
  const [given] = Object.keys(request.earlierSettings);
  const own = request.earlierUnderstanding ?? request.earlierDecisions;
  if (given !== undefined || own !== null) {
    throw badRequest(
      `${file} is a report and brings its own day, settings and corrections: leave the options of the earlier workbook out.`,
    );
  }
  const read = earlierReportOf(readJson(file));
  if ("reason" in read) throw badRequest(`${file}: ${read.reason}`);
  const { settings, fingerprint, version } = read.report.made;
  return { run: read.report, provenance: { from: "report", settings, fingerprint, version } };
}

/** What is not said of the earlier workbook is as for the later one, but for the first day of its period. */
async function earlierBook(request: RequestOf<"changed">): Promise<Earlier> {
  const files = {
    understanding: request.earlierUnderstanding ?? request.understanding,
    decisions: request.earlierDecisions ?? request.decisions,
  };
  const { settings: settled, decisions } = settledFrom(files);
  const asLater = { ...request.settings, from: undefined };
  const settings = settingsFrom({ ...asLater, ...request.earlierSettings }, settled);
  const workbook = await openBooks([request.earlier]);
  progress("Reading the earlier records");
  const { records, source } = recordsFrom(workbook, settings, decisions);
  const provenance = { settings: echoSettings(settings), fingerprint: source.fingerprint, version: VERSION };
  return { run: { records, settings }, provenance: { from: "workbook", ...provenance } };
}

function compared(earlier: EarlierBook | EarlierReport, later: LaterBook, tables: readonly TableId[]) {
  try {
    const found = compareRuns(earlier, later, tables.includes("what-changed-children"));
    if ("reason" in found) throw badRequest(found.reason);
    return found.changes;
  } catch (error) {
    if (error instanceof RecordsUnusable) throw unreadable(`Under the earlier settings: ${error.message}`);
    throw error;
  }
}

function inputsAll(request: RequestOf<"changed">): string[] {
  const own = [...filesOf([request.earlier]), request.earlierUnderstanding, request.earlierDecisions].filter(
    (file) => file !== null,
  );
  return [...inputsOf(request), ...own];
}

function tablesOf(names: readonly string[] | null): readonly TableId[] {
  const known = TABLE_IDS.filter((id) => TABLE_CATALOGUE[id].needs === "changes");
  if (names === null) return known.filter((id) => !TABLE_CATALOGUE[id].internal);
  const unknown = names.find((name) => !known.some((id) => id === tableIdOf(name)));
  if (unknown === undefined && names.length > 0) return known.filter((id) => names.includes(id));
  throw badRequest(`The tables of this command are: ${known.join(", ")}; not "${unknown ?? ""}".`);
}

function summaryOf(
  report: Report,
  { run, provenance }: Earlier,
  settings: Settings,
  outputs: readonly string[],
): string[] {
  const day = (asOf: number | null) => (asOf === null ? "no day" : dayInWords(asOf));
  const whole = report.tables.find(({ id }) => id === "what-changed");
  const sentences = whole === undefined ? [] : sentencesOf(whole, report);
  return [
    `From ${day(run.settings.asOf)} (${provenance.from === "report" ? "an earlier report" : "the earlier workbook"}) to ${day(settings.asOf)}:`,
    ...sentences.map((sentence) => (sentence.endsWith(".") ? sentence : `${sentence}.`)),
    ...(provenance.from === "report" ? [FROM_REPORT] : []),
    ...(run.settings.asOf === settings.asOf ? [SAME_DAY] : []),
    ...outputs.map((file) => `Written: ${file}`),
    "Nothing here is a diagnosis: talk with the child's clinician; local rules and licensed practice decide.",
  ];
}

const FROM_REPORT =
  "A report says how many and never who: what was entered late, corrected and removed since is told together. Give the earlier workbook to tell them apart.";
const SAME_DAY =
  "Both figures are for the same day, so nothing has happened between them. For an earlier day, add --earlier-as-of.";
