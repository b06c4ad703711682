/// <reference types="office-js" />
import type { DateSystem } from "../../../age/serial";
import type { JobOptions } from "../../../workbook/host";
import type { SheetOut } from "../../../workbook/sheets";
import type { Patience } from "../run";
import { writeCells } from "./cells";
import { withChartSentences } from "./chart-sentences";
import { drawCharts } from "./charts";
import { pageTrimmings } from "./page";
import { rangeOf } from "./ranges";
import { sizeSteps } from "./sizes";
import { doSteps, type Step } from "./steps";
import { addTables, type TableNames } from "./tables";
import { doTrimmings } from "./trimmings";
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
