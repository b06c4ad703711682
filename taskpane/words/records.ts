import type { Severity } from "../../src/records/findings/finding";
import { counted, listed, plural } from "../../src/words/numbers";
import type { Told } from "../state/pane-state";
import type { RecordsFound, TableFound } from "../worker/records/found";

/** The title of the place: what the records hold, as a sentence. */
export function recordsTitle(found: RecordsFound | null): string {
  if (!found) return "What does this workbook hold?";
  if (found.failure !== null) return "The records cannot be used yet";
  const { error, warning } = found.counts;
  if (error === 0 && warning === 0) return "Every row could be read and used";
  if (error === 0) return `Every row is used; ${plural(warning, "finding wants", "findings want")} a look`;
  return `${plural(error, "finding keeps", "findings keep")} rows from being used`;
}

export function toldOfReading(found: RecordsFound): Told {
  if (found.failure !== null) return { tone: "stopped", text: found.failure };
  return { tone: "done", text: `Read: ${plural(found.tables.length, "table", "tables")} found.` };
}

export function countsInWords({ error, warning, note }: Readonly<Record<Severity, number>>): string {
  if (error + warning + note === 0) return "No findings.";
  const parts = [
    error > 0 ? `${counted(error)} that keep a row from being used` : "",
    warning > 0 ? `${counted(warning)} to look at` : "",
    note > 0 ? plural(note, "note", "notes") : "",
  ].filter((part) => part !== "");
  return `Findings: ${listed(parts)}.`;
}

/** `Children: 240 of 240 rows used`. */
export function rowsUsed({ rows, used }: TableFound): string {
  return `${counted(used)} of ${plural(rows, "row", "rows")} used`;
}

/** Why rows were left out: `12 exact copy, 3 date blank`. */
export function leftOutInWords({ leftOut }: TableFound): string {
  const reasons = Object.entries(leftOut).filter(([, count]) => count > 0);
  return reasons.map(([reason, count]) => `${counted(count)} ${reason}`).join(", ");
}

export const SEVERITY_HEADINGS: Readonly<Record<Severity, { readonly title: string; readonly about: string }>> = {
  error: { title: "Not used", about: "These rows are left out of every figure until their cell is mended." },
  warning: { title: "Please look", about: "These rows are used. A person should see whether they are right." },
  note: { title: "Notes", about: "For information. Nothing needs doing." },
};

export function cellsInWords(count: number): string {
  return plural(count, "cell", "cells");
}

/** The place of a finding, as the button that shows it names it. */
export function placeOf(sheet: string, cell: string): string {
  return `${sheet}, ${cell}`;
}
