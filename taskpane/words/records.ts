import type { Severity } from "../../src/records/findings/finding";
import { counted, listed, plural } from "../../src/words/numbers";
import type { TableUse } from "../../src/records/records";
import { notUsed } from "../../src/records/understanding/not-used";
import { openQuestions } from "../../src/records/understanding/understanding";
import type { Told } from "../state/pane-state";
import type { RecordsFound, TableFound } from "../worker/records/found";

/** The title of the place: what the records hold, as a sentence. */
export function recordsTitle(found: RecordsFound | null): string {
  if (!found) return "What is in this workbook?";
  if (isAsked(found)) return "Check how this workbook is read";
  if (found.failure !== null) return "The records cannot be used yet";
  return notUsedInWords(found.tables) ?? "Every row is used";
}

/** `972 of 4,239 checks were not used.` Checks come first; null where every row is used. */
export function notUsedInWords(tables: readonly TableUse[]): string | null {
  const sentences = notUsed(tables).map(({ sentence }) => sentence);
  return sentences.length === 0 ? null : sentences.join(" ");
}

/** Where a person has to settle something first, what is missing is no fault yet. */
function isAsked({ failure, understanding }: RecordsFound): boolean {
  const { doubtful, unsettled } = openQuestions(understanding);
  return failure !== null && doubtful + unsettled > 0;
}

export function toldOfReading(found: RecordsFound): Told {
  if (isAsked(found)) return { tone: "done", text: "Read: check the guesses, then confirm once." };
  if (found.failure !== null) return { tone: "stopped", text: found.failure };
  return { tone: "done", text: `Read: ${plural(found.tables.length, "table", "tables")} found.` };
}

export function countsInWords({ error, warning, note }: Readonly<Record<Severity, number>>): string {
  if (error + warning + note === 0) return "No problems were found.";
  const parts = [
    error > 0 ? `${counted(error)} to fix` : "",
    warning > 0 ? `${counted(warning)} to check` : "",
    note > 0 ? `${counted(note)} for information` : "",
  ].filter((part) => part !== "");
  return `Problems found: ${listed(parts)}.`;
}

/** The one thing to do next. */
export interface NextStep {
  readonly does: "read" | "answer" | "confirm" | "quarter";
  readonly label: string;
  readonly why: string;
}

export function nextStep(state: {
  readonly isRead: boolean;
  readonly isOld: boolean;
  readonly failure: string | null;
  readonly open: { readonly unsettled: number; readonly doubtful: number; readonly choices: number };
}): NextStep {
  const { unsettled, doubtful, choices } = state.open;
  if (!state.isRead) return { does: "read", label: "Read the workbook", why: FIRST };
  if (unsettled > 0) {
    const words = plural(unsettled, "word", "words");
    return { does: "answer", label: `Say what ${words} ${unsettled === 1 ? "means" : "mean"}`, why: UNSETTLED };
  }
  if (doubtful + choices > 0) {
    return { does: "confirm", label: "Confirm, and read it this way", why: choices > 0 ? CHOSEN : GUESSED };
  }
  if (state.isOld || state.failure !== null) {
    return { does: "read", label: "Read the workbook again", why: state.failure ?? OLD };
  }
  return { does: "quarter", label: "Go on to Quarter", why: SETTLED };
}

const FIRST =
  "Reading finds the children, their checks and the skills, and lists every row that cannot be used. Your workbook stays as it is, and nothing leaves it.";
const OLD =
  "A cell, a setting or a correction changed since the workbook was read. Read it again to see what it changes.";
const UNSETTLED =
  "Some words among results or areas are not known. Their rows are not used until you say what they mean.";
const GUESSED =
  "Parts of this workbook are read by a guess. Check them below, change what is wrong, then confirm once.";
const CHOSEN = "Your choices are not in force yet. Confirm them when you are through.";
const SETTLED = "The way the workbook is read is settled.";

/** Beside the guesses of a workbook for which nothing was settled yet. */
export const SAVED_EARLIER =
  "Did you save corrections for an earlier quarter? They are applied here, and what moved since is said.";

/** `Children: 240 of 240 rows used`. */
export function rowsUsed({ rows, used }: TableFound): string {
  return `${counted(used)} of ${plural(rows, "row", "rows")} used`;
}

/** Why rows were left out: `12 exact copies, 3 blank dates`. */
export function leftOutInWords({ leftOut }: TableFound): string {
  const reasons = Object.entries(leftOut).filter(([, count]) => count > 0);
  return reasons.map(([reason, count]) => `${counted(count)} ${reason}`).join(", ");
}

export const SEVERITY_HEADINGS: Readonly<Record<Severity, { readonly title: string; readonly about: string }>> = {
  error: { title: "To fix", about: "These rows are left out of every figure until the cell is corrected." },
  warning: { title: "To check", about: "These rows are used. Check whether they are right." },
  note: { title: "For information", about: "Nothing needs to be done." },
};

export function cellsInWords(count: number): string {
  return plural(count, "cell", "cells");
}

/** The place of a finding, as the button that shows it names it. */
export function placeOf(sheet: string, cell: string): string {
  return `${sheet}, ${cell}`;
}
