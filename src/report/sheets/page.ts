import type { PrintOut } from "../../workbook/sheets";
import type { Report } from "../report";
import type { SheetDraft } from "./sheet-draft";
import { settingDay } from "./setting-day";

/** `Period July 1, 2026 to September 30, 2026`. */
export function periodInWords({ settings }: Report): string {
  const asOf = settingDay(settings, "asOf") ?? "no date given";
  const from = settingDay(settings, "from");
  return from === null ? `As of ${asOf}` : `Period ${from} to ${asOf}`;
}

export function footerOf(report: Report, internal = false): string {
  const asOf = settingDay(report.settings, "asOf") ?? "no date";
  const made = `${report.tool.name} ${report.tool.version}, as of ${asOf}`;
  return internal ? `INTERNAL: about single children, not to be passed on. ${made}` : made;
}

export function landscapePage(report: Report, headerRow: number, internal = false): PrintOut {
  return {
    landscape: true,
    repeatRows: { first: headerRow, last: headerRow },
    fit: "one page wide",
    footer: footerOf(report, internal),
  };
}

/** What a landscape page of letter size holds within its margins. */
const PAGE_POINTS = { width: 690, height: 490 };
const POINTS_PER_CHARACTER = 5.25;
/** What runs over by less is easier to read in smaller print than on a second page of a few lines. */
const LITTLE_OVER = 1.5;

/** One page where the columns up to `lastColumn`, made to fit a page's width, run a little over its height. */
export function fitOf(draft: SheetDraft, lastColumn: number): PrintOut["fit"] {
  const widthPoints = draft.widthOf(0, lastColumn) * POINTS_PER_CHARACTER;
  const holds = PAGE_POINTS.height * Math.max(1, widthPoints / PAGE_POINTS.width);
  const isLittleOver = draft.heightPoints > holds && draft.heightPoints <= LITTLE_OVER * holds;
  return isLittleOver ? "one page" : "one page wide";
}

export function portraitPage(report: Report): PrintOut {
  return { landscape: false, fit: "one page wide", footer: footerOf(report) };
}
