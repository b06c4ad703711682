import { definitionCheckJson } from "../report/json";
import { TOOL_NAME } from "../report/report";
import { VERSION } from "../report/version";
import { echoSettings } from "../settings/settings";
import { definitionCheck, definitionCheckTable } from "../tables/definition-check/definition-check";
import { figureFrom } from "../tables/definition-check/figure";
import { dotLines } from "../tables/definition-check/words";
import { unknownColumn } from "../tables/groups";
import { badRequest, EXIT } from "./failure";
import { checkOutputs, writeWhole } from "./files";
import { openBooks } from "./books";
import { inputsOf, recordsFrom, settingsFrom, settledFrom } from "./open";
import type { RequestOf } from "./request";
import { print, progress } from "./say";

/** Prints how firm one figure is: the sentence, the choices as dots, and the notes. */
export async function runFirmCommand(request: RequestOf<"firm">): Promise<number> {
  const settled = settledFrom(request);
  const settings = settingsFrom(request.settings, settled.settings);
  if (settings.asOf === null)
    throw badRequest("Give the day that the figure is true for: add --as-of, such as --as-of 2026-09-30.");
  checkOutputs(inputsOf(request), request.json === null ? [] : [request.json]);
  const workbook = await openBooks(request.books);
  progress("Reading the records");
  const { records, source } = recordsFrom(workbook, settings, settled.decisions);
  const unknown = unknownColumn(records.enrolments.columns, settings.by);
  if (unknown !== null) throw badRequest(unknown);
  const read = figureFrom(request.figure, records.skills, settings.by.length);
  if ("message" in read) throw badRequest(read.message);
  progress("Making the figure under every choice");
  const check = definitionCheck(records, settings, read.figure);
  if ("reason" in check) throw badRequest(check.reason);
  const table = definitionCheckTable(check);
  const echo = echoSettings(settings);
  if (request.json !== null) {
    const provenance = { ...source, settings: echo, version: VERSION, seed: settings.seed };
    const tool = { name: TOOL_NAME, version: VERSION };
    writeWhole(request.json, definitionCheckJson({ tool, settings: echo, input: records.input, provenance }, table));
  }
  const [sentence, ...notes] = table.notes;
  print([sentence, "", ...dotLines(check), "", ...notes].join("\n"));
  return EXIT.done;
}
