import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { strFromU8 } from "fflate";
import type { Day } from "../age/day";
import { nodeInflate } from "../hosts/file/node-inflate";
import { readWorkbook, UnreadableWorkbook } from "../hosts/file/read-workbook";
import { writeWorkbook } from "../hosts/file/write-workbook";
import { cellDifferences, differencesInWords } from "../report/again/differences";
import { madeFromReport, type MadeFrom, parseProvenanceLine } from "../report/again/provenance-line";
import { reportJson } from "../report/json";
import type { Report } from "../report/report";
import { runReport } from "../report/run";
import { reportSheets } from "../report/sheets/report-sheets";
import type { Settings } from "../settings/settings";
import { tableIdOf } from "../tables/catalogue";
import type { TableId } from "../tables/table";
import { plural } from "../words/numbers";
import type { SheetOut } from "../workbook/sheets";
import { badRequest, EXIT, unreadable } from "./failure";
import { readBytes } from "./files";
import { openBooks } from "./books";
import { recordsFrom, reportOrFail, settingsFrom, settledFrom } from "./open";
import type { RequestOf } from "./request";
import { print, progress } from "./say";

const SAME = "Made again from the same records: the same, to the byte.";

/** Makes a report again from what it says of itself, and says whether it is the same to the byte. */
export async function runAgainCommand(request: RequestOf<"again">): Promise<number> {
  const bytes = readBytes(request.report);
  const earlier = await earlierFrom(request.report, bytes);
  const { decisions } = settledFrom(request);
  const settings = settingsFrom(earlier.made.settings);
  const workbook = await openBooks(
    request.books,
    earlier.made.files?.map(({ file }) => file),
  );
  const { records, source } = recordsFrom(workbook, settings, decisions);
  const ask = { settings, tables: tablesOf(request.report, earlier.made), source, onStep: progress };
  const report = reportOrFail(runReport(records, ask));
  if (earlier.isSame(bytes, report, settings)) {
    print(SAME);
    return EXIT.done;
  }
  print([...reasonLines(earlier.made, report), ...earlier.cellLines(report)].join("\n"));
  return EXIT.findings;
}

function reasonLines(made: MadeFrom, { provenance }: Report): string[] {
  const reasons = differencesInWords(made, provenance);
  const changes = made.version === provenance.version ? [] : changesSince(made.version);
  if (reasons.length > 0) return ["Made again, and not the same.", ...reasons, ...changes];
  return [
    "Made again, and not the same, though records, corrections, settings and version are: the file was changed after it was made, or another JavaScript engine made it.",
  ];
}

interface Earlier {
  readonly made: MadeFrom;
  readonly isSame: (bytes: Uint8Array, report: Report, settings: Settings) => boolean;
  readonly cellLines: (report: Report) => string[];
}

async function earlierFrom(file: string, bytes: Uint8Array): Promise<Earlier> {
  return isZip(bytes) ? fromWorkbook(file, bytes) : fromJson(file, bytes);
}

function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b;
}

function fromJson(file: string, bytes: Uint8Array): Earlier {
  const json = parsedJson(bytes);
  const made = madeFromReport(json);
  if (made === null) throw badRequest(notOurs(file));
  return {
    made,
    isSame: (given, report) => sameBytes(given, new TextEncoder().encode(reportJson(report))),
    cellLines: (report) => {
      const { tables } = json as { tables: Parameters<typeof cellDifferences>[0] };
      const { count, first } = cellDifferences(
        tables,
        (JSON.parse(reportJson(report)) as typeof json & { tables: typeof tables }).tables,
      );
      const head = count === 0 ? "No cell of a table differs." : `${plural(count, "cell differs", "cells differ")}:`;
      return [head, ...first.map(({ place, earlier, now }) => `  ${place}: ${earlier} then, ${now} now`)];
    },
  };
}

function parsedJson(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(strFromU8(bytes));
  } catch {
    return null;
  }
}

async function fromWorkbook(file: string, bytes: Uint8Array): Promise<Earlier> {
  const line = await provenanceIn(file, bytes);
  if (line === null) throw badRequest(notOurs(file));
  return {
    made: line,
    isSame: (given, report, { asOf }) => sameBytes(given, writeWorkbook(sheetsOf(report), { created: asOf as Day })),
    cellLines: () => ["Compare the REPORT.json of both days to see which cells differ: make one with report --json."],
  };
}

function sheetsOf(report: Report): SheetOut[] {
  return reportSheets(report);
}

async function provenanceIn(file: string, bytes: Uint8Array): Promise<MadeFrom | null> {
  try {
    const { sheets } = await readWorkbook(bytes, { inflate: nodeInflate });
    return sheets.flatMap(({ grid }) => grid.strings.flatMap((text) => parseProvenanceLine(text) ?? []))[0] ?? null;
  } catch (error) {
    if (error instanceof UnreadableWorkbook) throw unreadable(`${file}: ${error.message}`);
    throw error;
  }
}

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, at) => byte === b[at]);
}

function tablesOf(file: string, { tables }: MadeFrom): readonly TableId[] {
  const known = tables.flatMap((id) => tableIdOf(id) ?? []);
  if (known.length === tables.length) return known;
  throw badRequest(`${file} has a table that this version does not make. Make it again with the version that made it.`);
}

function notOurs(file: string): string {
  return `${file} does not say how it was made: give a report workbook or a REPORT.json that windowline report wrote.`;
}

/** Written so that webpack carries the file into the bundle's folder and plain Node finds it in place. */
const CHANGELOG = new URL("../../CHANGELOG.md", import.meta.url);

/** The lines of the changelog since a version, newest first. */
function changesSince(version: string): string[] {
  const text = readFileSync(fileURLToPath(CHANGELOG), "utf8");
  const from = text.indexOf("\n## ");
  const to = text.indexOf(`\n## ${version}\n`);
  return to <= from ? [] : ["What changed since (CHANGELOG.md):", ...text.slice(from, to).trim().split("\n")];
}
