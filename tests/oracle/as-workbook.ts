import { gridOf } from "../../src/workbook/grid-builder";
import type { SheetIn, WorkbookIn } from "../../src/workbook/workbook";
import type { OracleInput } from "./input";

type Cells = (string | number | null)[];

/** The same rows as a workbook, so that the program can be run on them: one sheet and one Excel table each, ISO dates. */
export function asWorkbook(input: OracleInput): WorkbookIn {
  const children = input.children.map((row): Cells => [
    row.child,
    row.birth,
    gestationText(row.gestation),
    row.site,
    row.therapist,
    row.enrolled,
    row.left,
  ]);
  const observations = input.observations.map((row): Cells => [
    row.child,
    row.skill,
    row.date,
    row.result,
    row.observer ?? null,
    row.entered ?? null,
  ]);
  const skills = input.skills.map((row): Cells => [
    row.skill,
    row.label,
    row.area,
    row.opens,
    row.closes,
    row.ageBasis,
    row.expectedShare,
    row.follows,
  ]);
  return {
    dateSystem: 1900,
    sheets: [
      sheetOf("Children", ["Child", "Birth date", "Gestation", "Site", "Therapist", "Enrolled", "Left"], children),
      sheetOf("Observations", ["Child", "Skill", "Date", "Result", "Observer", "Entered"], observations),
      sheetOf(
        "Skills",
        ["Skill", "Label", "Area", "Opens", "Closes", "Age basis", "Expected share", "Follows"],
        skills,
      ),
    ],
  };
}

function sheetOf(name: string, headings: string[], rows: readonly Cells[]): SheetIn {
  const range = { top: 0, left: 0, bottom: rows.length, right: headings.length - 1 };
  const table = { name, range, headerRow: true, totalsRow: false };
  return { name, grid: gridOf([headings, ...rows]), tables: [table], merged: [] };
}

function gestationText(days: number | null): string | null {
  return days === null ? null : `${Math.floor(days / 7)}+${days % 7}`;
}
