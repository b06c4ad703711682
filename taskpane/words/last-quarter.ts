import type { Receipt } from "../../src/workbook/host";
import { plural } from "../../src/words/numbers";
import { dayFromIso } from "../../src/age/day";
import { dayInWords } from "../../src/words/dates";
import { MADE_AGAIN_THE_SAME } from "../../src/report/again/same";
import type { LastFile, Told } from "../state/pane-state";
import type { Compared, MadeAgain } from "../worker/last/last";
import { noted } from "./report";

export const LAST_ABOUT =
  "Choose last quarter’s workbook or a report made of it, to see why figures moved. The file stays on this machine.";

export const DAY_MISSING = "Give the day of last quarter’s figures, such as the last day of that quarter.";

export const LOST_ROWS = "Rows are missing that the last report had. Check these before you make the report:";

export const FROM_A_REPORT =
  "A report says how many and never who. What was entered late, corrected and removed is told together here. Choose last quarter’s workbook to tell them apart.";

const KINDS: Readonly<Record<LastFile["kind"], string>> = {
  workbook: "a workbook of records",
  report: "the numbers of a report",
  "report workbook": "a printed report",
};

/** `june.json: the numbers of a report as of June 30, 2026.` */
export function lastInWords({ name, kind, asOf }: LastFile): string {
  const day = asOf === null ? null : dayFromIso(asOf);
  return `${name}: ${KINDS[kind]}${day === null ? "" : ` as of ${dayInWords(day)}`}.`;
}

/** What cannot be done with a file of its kind. */
export function lastHint({ kind }: LastFile): string | null {
  if (kind !== "report workbook") return null;
  return "A printed report can be made again. To compare, choose the numbers saved beside it, or last quarter’s workbook.";
}

/** How a receipt names the run: it names nobody. */
export function comparisonLabel({ days }: Compared): string {
  return `What changed from ${days.earlier} to ${days.later}`;
}

export function toldOfComparison({ days }: Compared): Told {
  return { tone: "done", text: `Compared: ${days.earlier} with ${days.later}.` };
}

export function toldOfComparisonAdded({ sheets, note }: Receipt): Told {
  const added = plural(sheets.length, "sheet was", "sheets were");
  return { tone: "done", text: `${added} added after your own; nothing else was changed.${noted(note)}` };
}

export function toldOfAgain({ isSame, lines }: MadeAgain): Told {
  return isSame ? { tone: "done", text: MADE_AGAIN_THE_SAME } : { tone: "stopped", text: lines[0] ?? "" };
}

export function toldOfLost(lost: readonly string[]): Told {
  return {
    tone: "stopped",
    text: `No report was made: ${plural(lost.length, "table or site has", "tables or sites have")} fewer rows than the last report.`,
  };
}
