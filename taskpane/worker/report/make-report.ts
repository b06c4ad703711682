import { type Day, isoOf } from "../../../src/age/day";
import type { Report } from "../../../src/report/report";
import { reportSheets } from "../../../src/report/sheets/report-sheets";
import { periodInWords } from "../../../src/report/sheets/page";
import { sentencesOf } from "../../../src/report/sheets/sentences/sentences";
import { sheetNameOf } from "../../../src/report/sheets/sheet-plan";
import { dayInWords } from "../../../src/words/dates";
import type { SheetOut } from "../../../src/workbook/sheets";
import { chartsOf, previewOf, type ReportChart } from "../charts/preview";
import type { Made } from "./made";

/** What the worker keeps of what it made, until the next one of its kind. */
export interface KeptSheets {
  readonly asOf: Day;
  readonly sheets: readonly SheetOut[];
}

export interface KeptReport extends KeptSheets {
  readonly charts: readonly ReportChart[];
}

export function keep(report: Report, asOf: Day): KeptReport {
  const sheets = reportSheets(report);
  return { asOf, sheets, charts: chartsOf(sheets) };
}

export function madeOf(report: Report, kept: KeptReport): Made {
  return {
    label: dayInWords(kept.asOf),
    fileName: `report-${isoOf(kept.asOf)}.xlsx`,
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
    charts: kept.charts.map(previewOf),
  };
}
