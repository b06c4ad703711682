import { type Day, isoOf } from "../../../src/age/day";
import type { ReportFinding } from "../../../src/report/answer/finding";
import { figuresOf, type FindingFigure } from "../../../src/report/answer/figures";
import { fiveFindings } from "../../../src/report/answer/five-findings";
import type { Records } from "../../../src/records/records";
import type { Settings } from "../../../src/settings/settings";
import { definitionCheck } from "../../../src/tables/definition-check/definition-check";
import { checkNotes, dotPicture } from "../../../src/tables/definition-check/words";
import { rowsBehind } from "../../../src/tables/rows-behind";
import { pictureSheet } from "../../../src/report/answer/picture";
import type { Report } from "../../../src/report/report";
import { reportSheets } from "../../../src/report/sheets/report-sheets";
import { periodInWords } from "../../../src/report/sheets/page";
import { sentencesOf } from "../../../src/report/sheets/sentences/sentences";
import { sheetNameOf } from "../../../src/report/sheets/sheet-plan";
import { dayInWords } from "../../../src/words/dates";
import type { SheetOut } from "../../../src/workbook/sheets";
import { previewOf, type ReportChart } from "../charts/preview";
import { Refused } from "../refused";
import type { BehindAnswer, FirmAnswer, Made } from "./made";

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
  readonly figures: readonly (readonly FindingFigure[])[];
  readonly records: Records;
  readonly settings: Settings;
  /** Of each finding; null where there is nothing to draw. */
  readonly charts: readonly (ReportChart | null)[];
}

export function keep(report: Report, asOf: Day, records: Records, settings: Settings): KeptReport {
  const findings = fiveFindings(report);
  const charts = findings.map(({ picture }) => picture && pictureSheet(picture));
  const figures = findings.map(({ id }) => figuresOf(id, report));
  return { report, asOf, sheets: reportSheets(report), findings, charts, figures, records, settings };
}

export function madeOf(report: Report, { asOf, sheets, findings, charts, figures }: KeptReport): Made {
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
      const own = figures[at] ?? [];
      return { id, headline, below, chart: chart && previewOf(chart), figures: own.map(({ label }) => label) };
    }),
    firstSheet: sheets[0]?.name ?? "",
  };
}

/** Dots that a row of the narrowest pane has room for. */
const MOST_DOTS = 24;

/** How firm a figure of the report is. */
export function firm(kept: KeptReport, finding: number, figure: number): FirmAnswer {
  const check = definitionCheck(kept.records, kept.settings, figureAt(kept, finding, figure));
  if ("reason" in check) throw new Refused(check.reason);
  const [sentence = "", ...notes] = checkNotes(check);
  return { sentence, notes, picture: dotPicture(check, MOST_DOTS) };
}

const CELLS_A_PART = 25;

/** The rows behind a figure of the report, and the next of their cells. */
export function behind(kept: KeptReport, finding: number, figure: number, from: number): BehindAnswer {
  const { children, cells } = rowsBehind(kept.records, kept.settings, figureAt(kept, finding, figure));
  return { children, rows: cells.length, cells: cells.slice(from, from + CELLS_A_PART) };
}

function figureAt({ figures }: KeptReport, finding: number, figure: number) {
  const wanted = figures[finding]?.[figure];
  if (!wanted) throw new RangeError("figureAt: there is no such figure");
  return wanted.figure;
}
