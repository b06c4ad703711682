import type { Finding } from "../records/findings/finding";
import { readRecords, RecordsUnusable } from "../records/read-records";
import type { Records, TableUse } from "../records/records";
import { findingsJson } from "../report/json";
import { TOOL_NAME } from "../report/report";
import { VERSION } from "../report/version";
import { EXIT, unreadable } from "./failure";
import { checkOutputs, writeWhole } from "./files";
import { inputsOf, openWorkbook, settingsFrom, settledFrom } from "./open";
import { leftOutLines } from "./left-out";
import type { RequestOf } from "./request";
import { print } from "./say";

export async function runCheckCommand(request: RequestOf<"check">): Promise<number> {
  settingsFrom(request.settings);
  checkOutputs(inputsOf(request), request.json ? [request.json] : []);
  const settled = settledFrom(request);
  const { decisions } = settled;
  const settings = settingsFrom(request.settings, settled.settings);
  const workbook = await openWorkbook(request.book);
  const { input, findings, failure } = readOrFail(() => readRecords(workbook, settings, decisions));
  if (request.json)
    writeWhole(request.json, findingsJson({ tool: { name: TOOL_NAME, version: VERSION }, input, findings }));
  print(checkSummary(input, findings, request.json));
  if (failure !== null) throw unreadable(failure);
  return findings.some(({ severity }) => severity !== "note") ? EXIT.findings : EXIT.done;
}

/** Findings are listed even where the records as a whole cannot be used. */
function readOrFail(read: () => Records): Pick<Records, "input" | "findings"> & { failure: string | null } {
  try {
    return { ...read(), failure: null };
  } catch (error) {
    if (!(error instanceof RecordsUnusable)) throw error;
    return { input: error.input, findings: error.findings, failure: error.message };
  }
}

function checkSummary(input: readonly TableUse[], findings: readonly Finding[], json: string | null): string {
  const uses = input.map(
    ({ table, sheet, address, rows, used }) => `${table} (${sheet}!${address}): ${used} of ${rows} rows used.`,
  );
  return [
    ...leftOutLines(input),
    ...uses,
    findings.length === 0 ? "No findings." : `${findings.length} findings:`,
    ...findings.map(lineOf),
    ...(json ? [`Written: ${json}`] : []),
  ].join("\n");
}

function lineOf({ severity, sheet, cell, rule, expected, advice }: Finding): string {
  return `${severity.padEnd(7)} ${sheet}!${cell}  ${rule}: expected ${expected}. ${advice}`;
}
