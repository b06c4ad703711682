import type { Day } from "../age/day";
import { writeWorkbook } from "../hosts/file/write-workbook";
import { RecordsUnusable } from "../records/read-records";
import { keyOf } from "../records/cells/words";
import type { Decision } from "../records/corrections/decisions";
import { DecisionsInForce } from "../records/corrections/in-force";
import { makePage, type PageSubject } from "../report/pages/make-page";
import { NobodyOfThatName } from "../report/pages/nobody";
import type { SheetOut } from "../workbook/sheets";
import { badRequest, EXIT } from "./failure";
import { checkOutputs, writeWhole } from "./files";
import { openBooks } from "./books";
import { inputsOf, refuseOther, settingsFrom, settledFrom, unusable } from "./open";
import type { RequestOf } from "./request";
import { print, progress } from "./say";

export async function runPageCommand(request: RequestOf<"page">): Promise<number> {
  settingsFrom(request.settings);
  const settled = settledFrom(request);
  const { decisions } = settled;
  const settings = settingsFrom(request.settings, settled.settings);
  const asOf = asOfOr(settings.asOf);
  const subject = subjectOf(request, decisions);
  checkOutputs(inputsOf(request), [request.out]);
  const workbook = await openBooks(request.books);
  refuseOther(workbook, decisions);
  progress("Writing the page");
  const sheet = made(() => makePage(workbook, settings, decisions, subject, request.visits));
  writeWhole(request.out, writeWorkbook([sheet], { created: asOf }));
  print(
    `Written: ${request.out}\nIt is about single children: print it for those it is meant for, or keep it with the records.`,
  );
  return EXIT.done;
}

function asOfOr(asOf: Day | null): Day {
  if (asOf !== null) return asOf;
  throw badRequest("A page needs the day it is true for: add --as-of, such as --as-of 2026-09-30.");
}

/** An id that was joined to another names the same child. */
function subjectOf({ child, therapist }: RequestOf<"page">, decisions: readonly Decision[]): PageSubject {
  if (child !== null && therapist === null) {
    return { kind: "child", id: new DecisionsInForce(decisions).child(keyOf(child)) };
  }
  if (therapist !== null && child === null) return { kind: "therapist", code: therapist };
  throw badRequest("Say whose page it is: --child with an id, or --therapist with a code, one of the two.");
}

/** Says in a sentence what stopped a page that could not be made. */
function made(make: () => SheetOut): SheetOut {
  try {
    return make();
  } catch (error) {
    if (error instanceof NobodyOfThatName) throw badRequest(error.message);
    if (error instanceof RecordsUnusable) throw unusable(error.message);
    throw error;
  }
}
