import type { Finding } from "../records/findings/finding";
import { readRecords, RecordsUnusable } from "../records/read-records";
import type { Records, TableUse } from "../records/records";
import { findingsJson } from "../report/json";
import { placeInWords } from "../workbook/sources";
import { TOOL_NAME } from "../report/report";
import { VERSION } from "../report/version";
import { EXIT } from "./failure";
import { checkOutputs, writeWhole } from "./files";
import { openBooks } from "./books";
import { inputsOf, refuseOther, settingsFrom, settledFrom, unusable } from "./open";
import { leftOutLines } from "./left-out";
import type { RequestOf } from "./request";
import { print } from "./say";

export async function runCheckCommand(request: RequestOf<"check">): Promise<number> {
  settingsFrom(request.settings);
  checkOutputs(inputsOf(request), request.json ? [request.json] : []);
  const settled = settledFrom(request);
  const { decisions } = settled;
  const settings = settingsFrom(request.settings, settled.settings);
  const workbook = await openBooks(request.books);
  refuseOther(workbook, decisions);
  const { input, findings, failure } = readOrFail(() => readRecords(workbook, settings, decisions));
  if (request.json)
    writeWhole(request.json, findingsJson({ tool: { name: TOOL_NAME, version: VERSION }, input, findings }));
  print(checkSummary(input, findings, request.json, failure !== null));
  if (failure !== null) throw unusable(failure);
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

function checkSummary(
  input: readonly TableUse[],
  findings: readonly Finding[],
  json: string | null,
  isUnusable: boolean,
): string {
  const uses = input.map(
    (use) => `${use.table} (${placeInWords(use, use.address)}): ${use.used} of ${use.rows} rows used.`,
  );
  return [
    ...leftOutLines(input),
    ...uses,
    isUnusable
      ? "No figures can be made from these records yet."
      : findings.length === 0
        ? "No problems found."
        : `${findings.length} ${findings.length === 1 ? "problem" : "problems"} found:`,
    ...findings.map(lineOf),
    ...(json ? [`Written: ${json}`] : []),
  ].join("\n");
}

function lineOf({ severity, rule, expected, advice, ...place }: Finding): string {
  const where = place.sheet === "" && place.file === undefined ? "!" : placeInWords(place, place.cell);
  return `${severity.padEnd(7)} ${where}  ${rule}: expected ${expected}. ${advice}`;
}
