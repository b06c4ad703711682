import { HostFailure } from "../../src/workbook/host";
import { WorkFailed } from "../client/work-failed";
import type { JobKind, Told } from "../state/pane-state";

/** What is told when a job did not come to its end. */
export function toldOfFailure(error: unknown, kind: JobKind): Told {
  if (isCancel(error)) return { tone: "done", text: CANCELLED[kind] };
  if (kind === "adding" && isChange(error)) return { tone: "stopped", text: CHANGED_BEFORE_PAGE };
  const said = error instanceof HostFailure ? error.message : error instanceof WorkFailed ? error.said : null;
  return { tone: "stopped", text: said ?? unknownFailure(error, kind) };
}

/** A cancel that Excel did not let go through in time: the pane goes on, and says what may still come. */
export function toldOfSlowCancel(kind: JobKind): Told {
  const may = MAY_STILL_COME[kind] ?? "Nothing that it does later changes your records.";
  return { tone: "stopped", text: `Canceled, though Excel has not answered yet. ${may}` };
}

const MAY_STILL_COME: Readonly<Partial<Record<JobKind, string>>> = {
  building: "A sheet may still appear. It is then listed under Added to this workbook, to be removed.",
  comparing: "A sheet may still appear. It is then listed under Added to this workbook, to be removed.",
  adding: "A sheet may still appear. It is then listed under Added to this workbook, to be removed.",
  removing: "The sheets may still go. Those that are listed are still there.",
  saving: "The file may still open or be downloaded. Close or delete it if you do not want it.",
};

/** The reason a job ends with when the user cancels it. */
export class Cancelled extends Error {
  override readonly name = "Cancelled";
}

/** Without them every figure could be another: nothing is made then. */
export function correctionsUnread(why: string): string {
  return `The corrections kept with this workbook could not be read, so nothing was made without them. ${why}`;
}

/** A host speaks of the report, which a page is not. */
function isChange(error: unknown): boolean {
  return error instanceof HostFailure && error.kind === "changed meanwhile";
}

const CHANGED_BEFORE_PAGE =
  "The records changed after they were read, so no page was added. List the children again, then add the page.";

function isCancel(error: unknown): boolean {
  return error instanceof Cancelled || (error instanceof DOMException && error.name === "AbortError");
}

const CANCELLED: Readonly<Record<JobKind, string>> = {
  reading: "Canceled. Nothing was changed; read the workbook again when you are ready.",
  building: "Canceled. Nothing was added to the workbook.",
  comparing: "Canceled. Nothing was compared, and nothing was added to the workbook.",
  repeating: "Canceled. The report was not made again.",
  listing: "Canceled. List the children again when you are ready.",
  adding: "Canceled. No page was added to the workbook.",
  removing: "Canceled. Sheets that are still listed are still there.",
  saving: "Canceled. No file was saved.",
  opening: "Canceled. No release log was opened.",
  preparing: "Canceled. Nothing was prepared, and nothing was written.",
  trying: "Canceled. Nothing more was tried; prepare the release again.",
  checking: "Canceled. The text was not checked; prepare the release again.",
};

const UNDONE: Readonly<Record<JobKind, string>> = {
  reading: "The workbook could not be read. Nothing was changed.",
  building: "The report could not be made. Nothing was added to the workbook.",
  comparing: "The two quarters could not be compared. Nothing was added to the workbook.",
  repeating: "The report could not be made again. Nothing was changed.",
  listing: "The children could not be listed. Nothing was changed.",
  adding: "The page could not be made. Nothing was added to the workbook.",
  removing: "The sheets could not be removed; those that are still listed are still there.",
  saving: "The file could not be saved.",
  opening: "The release log could not be opened.",
  preparing: "The release could not be prepared. Nothing was written.",
  trying: "Other ways could not be tried. Nothing was written.",
  checking: "The text could not be checked.",
};

const FILE_MISSING = "A file of the add-in did not load. Check the connection, then close the pane and open it again.";

/** The failure's own text is left out: it may carry the text of a cell. Its kind helps whoever mends the program. */
function unknownFailure(error: unknown, kind: JobKind): string {
  const name = error instanceof WorkFailed ? error.failure.name : error instanceof Error ? error.name : "unknown";
  if (name === "WorkerMissing") return `${UNDONE[kind]} ${FILE_MISSING}`;
  if (name === "WorkerStopped") {
    return `${UNDONE[kind]} The work stopped, most likely because there was not enough memory: close other workbooks and try again.`;
  }
  return `${UNDONE[kind]} Try again; if it happens again, tell the person who maintains this add-in (error: ${name}).`;
}
