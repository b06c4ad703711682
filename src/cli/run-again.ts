import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { strFromU8 } from "fflate";
import type { Day } from "../age/day";
import { nodeInflate } from "../hosts/file/node-inflate";
import { readWorkbook, UnreadableWorkbook } from "../hosts/file/read-workbook";
import { writeWorkbook } from "../hosts/file/write-workbook";
import {
  NO_SUCH_TABLE,
  notTheSame,
  type ReportFile,
  reportFileOfCells,
  reportFileOfText,
  sameBytes,
  tablesToMake,
} from "../report/again/made-again";
import { MADE_AGAIN_THE_SAME } from "../report/again/same";
import { reportJson } from "../report/json";
import { runReport } from "../report/run";
import { reportSheets } from "../report/sheets/report-sheets";
import { badRequest, EXIT, unreadable } from "./failure";
import { readBytes } from "./files";
import { openBooks } from "./books";
import { recordsFrom, reportOrFail, settingsFrom, settledFrom } from "./open";
import type { RequestOf } from "./request";
import { print, progress } from "./say";

/** Makes a report again from what it says of itself, and says whether it is the same to the byte. */
export async function runAgainCommand(request: RequestOf<"again">): Promise<number> {
  const bytes = readBytes(request.report);
  const file = await reportFileFrom(request.report, bytes);
  const tables = tablesToMake(file.made);
  if (tables === null) throw badRequest(`${request.report} ${NO_SUCH_TABLE}`);
  const { decisions } = settledFrom(request);
  const settings = settingsFrom(file.made.settings);
  const workbook = await openBooks(
    request.books,
    file.made.files?.map((each) => each.file),
  );
  const { records, source } = recordsFrom(workbook, settings, decisions);
  const report = reportOrFail(runReport(records, { settings, tables, source, onStep: progress }));
  const again =
    file.tables === null
      ? writeWorkbook(reportSheets(report), { created: settings.asOf as Day })
      : new TextEncoder().encode(reportJson(report));
  if (sameBytes(bytes, again)) {
    print(MADE_AGAIN_THE_SAME);
    return EXIT.done;
  }
  print(notTheSame(file, report, readFileSync(fileURLToPath(CHANGELOG), "utf8")).join("\n"));
  return EXIT.findings;
}

async function reportFileFrom(name: string, bytes: Uint8Array): Promise<ReportFile> {
  const file = isZip(bytes) ? await fromWorkbook(name, bytes) : reportFileOfText(strFromU8(bytes));
  if (file) return file;
  throw badRequest(
    `${name} does not say how it was made: give a report workbook or a REPORT.json that windowline report wrote.`,
  );
}

function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b;
}

async function fromWorkbook(name: string, bytes: Uint8Array): Promise<ReportFile | null> {
  try {
    const { sheets } = await readWorkbook(bytes, { inflate: nodeInflate });
    return reportFileOfCells(sheets.flatMap(({ grid }) => grid.strings));
  } catch (error) {
    if (error instanceof UnreadableWorkbook) throw unreadable(`${name}: ${error.message}`);
    throw error;
  }
}

/** Written so that webpack carries the file into the bundle's folder and plain Node finds it in place. */
const CHANGELOG = new URL("../../CHANGELOG.md", import.meta.url);
