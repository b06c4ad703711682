import type { CellOut, ColumnOut, SheetOut } from "../workbook/sheets";
import { sheetOfDraft } from "./faults/draft";
import type { Sample } from "./make-sample";
import type { SampleTable } from "./tables";

const WIDTHS: Readonly<Record<string, number>> = {
  Label: 44,
  "Try together": 70,
  Basis: 60,
  Sign: 36,
  Area: 18,
  Skill: 18,
  Outcome: 24,
  Reason: 24,
  "Home language": 15,
  "Expected share": 15,
  "Gained any skill": 16,
};
const USUAL_WIDTH = 12;

/** The workbook of a sample: its tables or, where faults were asked for, the sheets that hold them. */
export function sampleSheets(sample: Sample): SheetOut[] {
  return sample.drafts.length > 0 ? sample.drafts.map(sheetOfDraft) : sample.tables.map(sheetOf);
}

/** A sheet with one Excel table on it, both under the table's name. */
function sheetOf(table: SampleTable): SheetOut {
  const rows: CellOut[][] = [[...table.headings], ...table.rows.map((row) => [...row])];
  return {
    name: table.name,
    columns: table.headings.map((heading) => columnOf(heading, table.dayColumns.includes(heading))),
    rows,
    frozen: { rows: 1, columns: 1 },
    tables: [
      { name: table.name, range: { top: 0, left: 0, bottom: table.rows.length, right: table.headings.length - 1 } },
    ],
  };
}

function columnOf(heading: string, holdsDays: boolean): ColumnOut {
  const width = WIDTHS[heading] ?? USUAL_WIDTH;
  return holdsDays ? { width, format: "date" } : { width };
}
