import path from "node:path";
import { writeWorkbook } from "../hosts/file/write-workbook";
import { rowsLost } from "../report/again/rows-lost";
import { type MadeFrom, madeFromReport } from "../report/again/provenance-line";
import { reportJson } from "../report/json";
import { runReport } from "../report/run";
import { dataSheets } from "../report/sheets/data-sheets";
import { reportSheets } from "../report/sheets/report-sheets";
import type { Settings } from "../settings/settings";
import { TABLES_OF_ONE_RUN, tableIdOf } from "../tables/catalogue";
import type { TableId } from "../tables/table";
import { isoOf, type Day } from "../age/day";
import { badRequest, EXIT } from "./failure";
import { checkOutputs, isFolder, readJson, writeWhole } from "./files";
import { openBooks, shownName } from "./books";
import { inputsOf, recordsFrom, reportOrFail, settingsFrom, settledFrom } from "./open";
import { summaryOf } from "./report-summary";
import type { RequestOf } from "./request";
import { print, progress } from "./say";

export async function runReportCommand(request: RequestOf<"report">): Promise<number> {
  settingsFrom(request.settings);
  const settled = settledFrom(request);
  const { decisions } = settled;
  const settings = settingsFrom(request.settings, settled.settings);
  const asOf = asOfOr(settings);
  const tables = tablesOf(request.tables);
  const out = outOf(request, asOf);
  const data = request.data ?? (out === null ? null : dataBeside(out));
  const outputs = [out, data, request.json].filter((file) => file !== null);
  checkOutputs([...inputsOf(request), ...(request.last === null ? [] : [request.last])], outputs);
  const last = request.last === null ? null : lastReport(request.last);
  const workbook = await openBooks(request.books);
  progress("Reading the records");
  const { records, source } = recordsFrom(workbook, settings, decisions);
  const report = reportOrFail(runReport(records, { settings, tables, source, onStep: progress }));
  progress("Writing the report");
  if (out !== null) writeWhole(out, writeWorkbook(reportSheets(report), { created: asOf }));
  if (data !== null) writeWhole(data, writeWorkbook(dataSheets(report), { created: asOf }));
  if (request.json !== null) writeWhole(request.json, reportJson(report));
  const lost = last === null ? [] : rowsLost(last, report.provenance);
  print([...lost, summaryOf(report, outputs)].join("\n"));
  return EXIT.done;
}

/** Reads it before anything is made, so that a bad one costs nothing. */
function lastReport(file: string): MadeFrom {
  const made = madeFromReport(readJson(file));
  if (made === null)
    throw badRequest(`${file} is not a REPORT.json that windowline report wrote. Nothing was written.`);
  return made;
}

/** Without a word about where to, the report goes to a workbook in this folder. */
function outOf({ out, json, books }: RequestOf<"report">, asOf: Day): string | null {
  if (out !== null || json !== null) return out;
  const first = path.resolve(shownName(books[0] as string));
  const name = path.basename(first, isFolder(first) ? "" : path.extname(first));
  return `${name}${books.length > 1 ? "-and-others" : ""}-report-${isoOf(asOf)}.xlsx`;
}

/** `REPORT-data.xlsx`. */
function dataBeside(report: string): string {
  return `${report.slice(0, -path.extname(report).length)}-data.xlsx`;
}

function asOfOr({ asOf }: Settings): Day {
  if (asOf === null)
    throw badRequest("A report needs the day its figures are true for: add --as-of, such as --as-of 2026-09-30.");
  return asOf;
}

function tablesOf(names: readonly string[] | null): readonly TableId[] | null {
  if (names === null) return null;
  const tables = names.flatMap((name) => tableIdOf(name) ?? []);
  const ofTwo = tables.find((id) => !TABLES_OF_ONE_RUN.includes(id));
  if (ofTwo) throw badRequest(`The table ${ofTwo} needs two workbooks: windowline changed makes it.`);
  if (tables.length === names.length && names.length > 0) return tables;
  const unknown = names.find((name) => tableIdOf(name) === null);
  throw badRequest(`There is no table "${unknown ?? ""}". The tables are: ${TABLES_OF_ONE_RUN.join(", ")}.`);
}
