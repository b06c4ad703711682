import type { SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { findingsSheets } from "./findings-sheets";
import { methodSheet } from "./method-sheet";
import { named } from "./report-sheets";
import { tableSheet } from "./table-sheet";

/** The data workbook: each table whole, to sort and filter; how the figures were made; the problems found. */
export function dataSheets(report: Report): SheetOut[] {
  return named([
    ...report.tables.map((table) => tableSheet(table, report)),
    methodSheet(report),
    ...findingsSheets(report),
  ]);
}
