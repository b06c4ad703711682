import type { Receipt, SavedAs } from "../../src/workbook/host";
import { counted, plural } from "../../src/words/numbers";
import type { Made } from "../worker/report/made";
import type { Job, Told } from "../state/pane-state";

export function quarterTitle(made: Made | null): string {
  return made === null ? "Make the report of a quarter" : `The report as of ${made.label} is ready`;
}

export const OLD_REPORT =
  "A cell, a setting or a correction changed since this report was made. Make it again to see what it changes.";
export const NOT_CONFIRMED =
  "You have not confirmed how this workbook is read. Figures made now leave out what is not settled.";
export const MAKE_AGAIN = "Make another report";

export function toldOfBuild(made: Made, { sheets, note }: Receipt): Told {
  const added = plural(sheets.length, "sheet was", "sheets were");
  return {
    tone: "done",
    text: `The report as of ${made.label} is ready. ${added} added after your own; nothing else was changed.${noted(note)}`,
  };
}

/** What a receipt has to say beside what was added. */
export function noted(note: string | undefined): string {
  return note === undefined ? "" : ` ${note}`;
}

/** How a receipt names the run: in Excel it is kept with the sheets, so it names nobody. */
export function reportLabel({ label }: Made): string {
  return `Report as of ${label}`;
}

export function toldOfRemoval(receipt: Receipt): Told {
  return { tone: "done", text: `Removed: ${receiptTitle(receipt)}.` };
}

/** A file that Excel opened is not on any disk yet. */
export function toldOfSaving(fileName: string, as: SavedAs): Told {
  const text = as === "opened" ? "Opened as a new workbook, not saved yet." : `Saved as ${fileName}.`;
  return { tone: "done", text };
}

export function followedInWords({ followed, everFollowed, period }: Made): string {
  return `${period}. ${plural(followed, "child", "children")} in the program on the last day, ${counted(everFollowed)} ever in the program by then.`;
}

export function receiptTitle({ label, sheets, unfinished }: Receipt): string {
  return `${unfinished ? "Unfinished: " : ""}${label}: ${plural(sheets.length, "sheet", "sheets")}`;
}

export function notListed(why: string): string {
  return `Sheets that were added could not be listed just now. They are as they were. ${why}`;
}

/** Sheets with one mark that nothing tells apart. */
export function unsureInWords(names: readonly string[]): string {
  const which = names.length === 1 ? "may be a copy of it" : "may be copies of it or of each other";
  return `${names.join(", ")} ${which}, so they are left alone. Delete by hand what you do not need.`;
}

/** `Making Age when met`, from the step of a run; a share of the way where it is known. */
export function stepInWords({ progress, cancelling }: Job, nameOf: (tableId: string) => string): string {
  if (cancelling) return "Cancelling";
  if (!progress) return "Starting";
  const made = /^Making (\S+)$/.exec(progress.step);
  const step = made ? `Making ${nameOf(made[1] as string)}` : progress.step;
  return progress.of > 0 ? `${step}: ${counted(progress.done)} of ${counted(progress.of)}` : step;
}
