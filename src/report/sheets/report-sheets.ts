import type { Table, TableId } from "../../tables/table";
import type { SheetOut } from "../../workbook/sheets";
import { safeSheetNames } from "../../workbook/sheet-names";
import type { Report } from "../report";
import { curveCharts } from "./curve-charts";
import { findingsInWords, findingsSheets } from "./findings-sheets";
import { metByBandCharts } from "./met-by-band-charts";
import { methodSheet } from "./method-sheet";
import { ratingsCharts } from "./ratings-charts";
import { referralsCharts } from "./referrals-charts";
import { scanChart } from "./scan-chart";
import { stepsCharts } from "./steps-charts";
import { summarySheet } from "./summary-sheet";
import { tableSheet } from "./table-sheet";
import { trendCharts } from "./trend-charts";
import { trendSheet } from "./trend-sheet";

/** The whole report as sheets: summary, tables with their charts, method, findings. */
export function reportSheets(report: Report): SheetOut[] {
  const tables = report.tables.flatMap((table) => sheetsOf(table, report));
  const findings = findingsSheets(report);
  const contents = [
    ...tables.map(({ sheet, about }) => ({ sheet: sheet.name, about })),
    { sheet: "Method", about: "Settings, rows used and left out, definitions, sources, cautions, provenance" },
    ...findings.map(({ name }) => ({ sheet: name, about: findingsInWords(report) })),
  ];
  const sheets = [
    summarySheet(report, contents),
    ...tables.map(({ sheet }) => sheet),
    methodSheet(report),
    ...findings,
  ];
  const names = safeSheetNames(sheets.map(({ name }) => name));
  return sheets.map((sheet, index) => ({ ...sheet, name: names[index] as string }));
}

interface Described {
  readonly sheet: SheetOut;
  readonly about: string;
}

function sheetsOf(table: Table, report: Report): Described[] {
  const charts = chartsOf(table, report);
  const rows = table.id === "trend" && table.rows.length > 0 ? trendSheet(table, report) : tableSheet(table, report);
  const sheet = { sheet: rows, about: table.title };
  return charts ? [{ sheet: charts, about: `${table.title}, drawn` }, sheet] : [sheet];
}

function chartsOf(table: Table, report: Report): SheetOut | null {
  return table.rows.length > 0 ? (CHARTS[table.id]?.(table, report) ?? null) : null;
}

/** How each table is drawn; null where its rows say more than a chart. */
const CHARTS: Readonly<Record<TableId, ((table: Table, report: Report) => SheetOut | null) | null>> = {
  "expected-by-now": null,
  "met-by-band": metByBandCharts,
  "met-by-band-left": null,
  "reached-by-age": null,
  "age-when-met": curveCharts,
  "since-enrollment": null,
  referrals: referralsCharts,
  "referral-scan": scanChart,
  "referral-steps": stepsCharts,
  ratings: ratingsCharts,
  trend: trendCharts,
  agreement: null,
  "skill-status": null,
  caseload: null,
  "recheck-plan": null,
};
