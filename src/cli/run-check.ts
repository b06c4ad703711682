import type { Finding } from "../records/finding";
import { readRecords, RecordsUnusable } from "../records/read-records";
import type { Records } from "../records/records";
import { findingsJson } from "../report/json";
import { TOOL_NAME } from "../report/report";
import { VERSION } from "../report/version";
import { EXIT, unreadable } from "./failure";
import { checkOutputs, writeWhole } from "./files";
import { decisionsFrom, openWorkbook, settingsFrom } from "./open";
import type { RequestOf } from "./request";
import { print } from "./say";

export async function runCheckCommand(request: RequestOf<"check">): Promise<number> {
  const settings = settingsFrom(request.settings);
  const inputs = [request.book, ...(request.decisions ? [request.decisions] : [])];
  checkOutputs(inputs, request.json ? [request.json] : []);
  const decisions = decisionsFrom(request.decisions);
  const workbook = await openWorkbook(request.book);
  const records = readOr(() => readRecords(workbook, settings, decisions));
  const { input, findings } = records;
  if (request.json)
    writeWhole(request.json, findingsJson({ tool: { name: TOOL_NAME, version: VERSION }, input, findings }));
  print(checkSummary(records, request.json));
  return findings.some(({ severity }) => severity !== "note") ? EXIT.findings : EXIT.done;
}

function readOr(read: () => Records): Records {
  try {
    return read();
  } catch (error) {
    if (error instanceof RecordsUnusable) throw unreadable(error.message);
    throw error;
  }
}

function checkSummary({ input, findings }: Records, json: string | null): string {
  const uses = input.map(
    ({ table, sheet, address, rows, used }) => `${table} (${sheet}!${address}): ${used} of ${rows} rows used.`,
  );
  return [
    ...uses,
    findings.length === 0 ? "No findings." : `${findings.length} findings:`,
    ...findings.map(lineOf),
    ...(json ? [`Written: ${json}`] : []),
  ].join("\n");
}

function lineOf({ severity, sheet, cell, rule, expected, advice }: Finding): string {
  return `${severity.padEnd(7)} ${sheet}!${cell}  ${rule}: expected ${expected}. ${advice}`;
}
