/// <reference types="office-js" />
import type { DateSystem } from "../../../age/serial";
import type { JobOptions } from "../../../workbook/host";
import type { SheetOut } from "../../../workbook/sheets";
import type { Patience } from "../run";
import { writeCells } from "./cells";
import { withChartSentences } from "./chart-sentences";
import { chartSteps } from "./charts";
import { pageStep } from "./page";
import { rangeOf } from "./ranges";
import { sizeSteps } from "./sizes";
import { doSteps, type Step } from "./steps";
import { type TableNames, tableSteps } from "./tables";

/** Fills a sheet that was just added. */
export async function writeSheet(
  sheetId: string,
  out: SheetOut,
  dateSystem: DateSystem,
  names: TableNames,
  patience: Patience,
  options?: JobOptions,
): Promise<void> {
  const sheet = withChartSentences(out);
  await writeCells(sheetId, sheet, dateSystem, null, patience, options);
  const steps = [...sizeSteps(sheet), ...mergeSteps(sheet), ...viewSteps(sheet), ...tableSteps(sheet, names)];
  // Charts come last: where a chart stands depends on the sizes of the rows and columns before it.
  await doSteps(sheetId, [...steps, ...chartSteps(sheet)], patience, options);
  if (sheet.print) await doSteps(sheetId, [pageStep(sheet.print)], patience, options);
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
