import type { PrintOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { settingDay } from "./words";

/** `Period 1 July 2026 to 30 September 2026, figures as of 30 September 2026`. */
export function periodInWords({ settings }: Report): string {
  const asOf = settingDay(settings, "asOf") ?? "no date given";
  const from = settingDay(settings, "from");
  return from === null ? `As of ${asOf}` : `Period ${from} to ${asOf}, figures as of ${asOf}`;
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

export function portraitPage(report: Report): PrintOut {
  return { landscape: false, fit: "one page wide", footer: footerOf(report) };
}
