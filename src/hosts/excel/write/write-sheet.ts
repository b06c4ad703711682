/// <reference types="office-js" />
import { MARGINS } from "../../../workbook/paper";
import type { PrintOut, SheetOut } from "../../../workbook/sheets";
import { rangeOf } from "./ranges";
import { doTrimmings, type Trimming } from "./trimmings";
import type { DateSystem } from "../../../age/serial";
import type { JobOptions } from "../../../workbook/host";
import type { Patience } from "../run";
import { writeCells } from "./cells";
import { withChartSentences } from "./chart-sentences";
import { drawCharts } from "./charts";
import { sizeSteps } from "./sizes";
import { doSteps, type Step } from "./steps";
import { addTables, type TableNames } from "./tables";
import type { ValueBlock } from "./value-blocks";

/** Adds a sheet and fills it; gives what of its page setup Excel did not take. */
export async function writeSheet(
  add: (first: ValueBlock | null) => Promise<string>,
  out: SheetOut,
  dateSystem: DateSystem,
  names: TableNames,
  patience: Patience,
  options?: JobOptions,
): Promise<string[]> {
  const sheet = withChartSentences(out);
  const sheetId = await writeCells(add, sheet, dateSystem, patience, options);
  await doSteps(sheetId, [...sizeSteps(sheet), ...mergeSteps(sheet), ...viewSteps(sheet)], patience, options);
  await addTables(sheetId, sheet, names, patience, options);
  // Charts come last: where a chart stands depends on the sizes of the rows and columns before it.
  await drawCharts(sheetId, sheet, patience, options);
  return sheet.print ? doTrimmings(sheetId, pageTrimmings(sheet.print), patience, options) : [];
}

function mergeSteps({ merged = [] }: SheetOut): Step[] {
  return merged.map((area) => (sheet) => rangeOf(sheet, area).merge(false));
}

function viewSteps({ frozen, gridlines }: SheetOut): Step[] {
  const steps: Step[] = [];
  if (gridlines === false) steps.push((sheet) => (sheet.showGridlines = false));
  if (frozen && (frozen.rows > 0 || frozen.columns > 0))
    steps.push((sheet) => freeze(sheet.freezePanes, sheet, frozen));
  return steps;
}

function freeze(panes: Excel.WorksheetFreezePanes, sheet: Excel.Worksheet, frozen: { rows: number; columns: number }) {
  if (frozen.columns === 0) panes.freezeRows(frozen.rows);
  else if (frozen.rows === 0) panes.freezeColumns(frozen.columns);
  else panes.freezeAt(sheet.getRangeByIndexes(0, 0, frozen.rows, frozen.columns));
}

/** What Excel takes in a header or footer is 255 characters, codes and all. */
const LONGEST_TEXT = 200;

/** Where no printer is set up Excel may refuse some of them: the sheet is whole without any. */
function pageTrimmings(print: PrintOut): Trimming[] {
  const { repeatRows, area } = print;
  const layout = (what: string, set: (page: Excel.PageLayout, sheet: Excel.Worksheet) => void): Trimming => ({
    what,
    step: (sheet) => set(sheet.pageLayout, sheet),
  });
  const pages = { horizontalFitToPages: 1, ...(print.fit === "one page" && { verticalFitToPages: 1 }) };
  return [
    layout("orientation", (page) => (page.orientation = print.landscape ? "Landscape" : "Portrait")),
    layout("paper size", (page) => (page.paperSize = "Letter")),
    layout("zoom", (page) => (page.zoom = pages)),
    layout("margins", (page) => page.setPrintMargins("Inches", MARGINS)),
    ...(repeatRows
      ? [layout("rows to repeat", (page) => page.setPrintTitleRows(`$${repeatRows.first + 1}:$${repeatRows.last + 1}`))]
      : []),
    ...(area ? [layout("print area", (page, sheet) => page.setPrintArea(rangeOf(sheet, area)))] : []),
    layout("header and footer", (page) => setTexts(page.headersFooters.defaultForAllPages, print)),
  ];
}

function setTexts(texts: Excel.HeaderFooter, { header, footer }: PrintOut): void {
  if (header) texts.leftHeader = plain(header);
  texts.leftFooter = plain(footer);
  texts.centerFooter = "&A";
  texts.rightFooter = "Page &P of &N";
}

/** "&" starts a code in a header or footer; twice it is itself, and never cut in two. */
function plain(text: string): string {
  return text
    .replaceAll("&", "&&")
    .slice(0, LONGEST_TEXT)
    .replace(/(?<!&)((?:&&)*)&$/, "$1");
}
