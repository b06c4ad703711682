import { type Day, isoOf } from "../../../src/age/day";
import type { ReportFinding } from "../../../src/report/answer/finding";
import { fiveFindings } from "../../../src/report/answer/five-findings";
import { pictureSheet } from "../../../src/report/answer/picture";
import type { Report } from "../../../src/report/report";
import { reportSheets } from "../../../src/report/sheets/report-sheets";
import { periodInWords } from "../../../src/report/sheets/page";
import { sentencesOf } from "../../../src/report/sheets/sentences/sentences";
import { sheetNameOf } from "../../../src/report/sheets/sheet-plan";
import { dayInWords } from "../../../src/words/dates";
import type { SheetOut } from "../../../src/workbook/sheets";
import { previewOf, type ReportChart } from "../charts/preview";
import type { Made } from "./made";

export { reportJson } from "../../../src/report/json";
export { runReport } from "../../../src/report/run";

/** What the worker keeps of what it made, until the next one of its kind. */
export interface KeptSheets {
  readonly asOf: Day;
  readonly sheets: readonly SheetOut[];
}

export interface KeptReport extends KeptSheets {
  readonly report: Report;
  readonly findings: readonly ReportFinding[];
  /** Of each finding; null where there is nothing to draw. */
  readonly charts: readonly (ReportChart | null)[];
}

export function keep(report: Report, asOf: Day): KeptReport {
  const findings = fiveFindings(report);
  const charts = findings.map(({ picture }) => picture && pictureSheet(picture));
  return { report, asOf, sheets: reportSheets(report), findings, charts };
}

export function madeOf(report: Report, { asOf, sheets, findings, charts }: KeptReport): Made {
  return {
    label: dayInWords(asOf),
    fileName: `report-${isoOf(asOf)}.xlsx`,
    period: periodInWords(report),
    followed: report.print.followed,
    everFollowed: report.print.everFollowed,
    tables: report.tables.map((table) => ({
      id: table.id,
      name: sheetNameOf(table.id),
      internal: table.internal === true,
      rows: table.rows.length,
      sentences: sentencesOf(table, report),
    })),
    findings: findings.map(({ id, headline, below }, at) => {
      const chart = charts[at] ?? null;
      return { id, headline, below, chart: chart && previewOf(chart) };
    }),
    firstSheet: sheets[0]?.name ?? "",
  };
}
