import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { gridOf } from "../../src/workbook/grid-builder";
import type { WorkbookIn } from "../../src/workbook/workbook";
import { asRead } from "../sample/as-read";

export function sampleBook(children = 40): WorkbookIn {
  return asRead(sampleSheets(makeSample({ children, seed: 11 })));
}

export function faultyBook(): WorkbookIn {
  return asRead(sampleSheets(makeSample({ children: 60, seed: 7, defects: true })));
}

/** Sheets of plain values, each named as its table. */
export function bookOf(sheets: Readonly<Record<string, readonly (readonly unknown[])[]>>): WorkbookIn {
  return {
    dateSystem: 1900,
    sheets: Object.entries(sheets).map(([name, rows]) => ({ name, grid: gridOf(rows), tables: [], merged: [] })),
  };
}

/** Two children, one skill that is there under another name too, one look that names a skill nobody knows. */
export const SMALL = {
  Children: [
    ["Child", "Date of birth", "Gestation", "Site", "Enrolled", "Home language"],
    ["K-1", "2025-01-10", "39", "North", "2025-02-01", "English"],
    ["K-2", "2025-03-20", "40", "River", "2025-04-01", "Spanish"],
  ],
  Observations: [
    ["Child", "Skill", "Date", "Result"],
    ["K-1", "sits", "2025-08-01", "not met"],
    ["K-1", "sits", "2025-09-15", "met"],
    ["K-2", "sitting up", "2025-12-01", "met"],
    ["K-9", "sits", "2025-12-01", "met"],
  ],
  Skills: [
    ["Skill", "Label", "Area", "Opens", "Closes", "Basis"],
    ["sits", "Sits without help", "gross motor", 3.8, 9.2, "WHO"],
  ],
} as const;
