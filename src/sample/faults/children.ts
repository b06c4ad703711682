import type { Day } from "../../age/day";
import { CHILD_COLUMN as COLUMN, faultyChildRows } from "./child-rows";
import type { SampleTable } from "../tables";
import { columnsOf, type Draft, type DraftRow, fault, soundRows, spread } from "./draft";

const HEADINGS = [
  "CHILD ID",
  "Date of birth",
  "gestational age",
  " Site ",
  "Thérapist",
  "Enrolment date",
  "Left",
  "Family",
  "__proto__",
];

/** Children under a title, with headings of the program's own and every fault of ids, births, gestations and enrolments. */
export function faultyChildren(table: SampleTable, last: Day): Draft {
  return {
    name: "Children",
    columns: columnsOf(HEADINGS.length, [COLUMN.birth, COLUMN.enrolled, COLUMN.left]),
    above: [{ cells: ["Alder Fork, children of the program"] }, { cells: ["kept by the office"] }, { cells: [] }],
    headings: [
      {
        cells: HEADINGS,
        faults: [
          fault(COLUMN.child, null, "title above the headings", "The headings are found in the fourth row."),
          fault(COLUMN.birth, null, "another word for a heading", "It is read as Birth date."),
          fault(COLUMN.site, null, "spaces around a heading", "It is read as Site."),
          fault(4, null, "accent in a heading", "It is read as Therapist."),
          fault(COLUMN.language, null, "hostile heading", "It is a further column like any other."),
        ],
      },
    ],
    rows: [...spread(soundRows(table), faultyChildRows(last)), totalRow(table.rows.length)],
    excelTable: false,
  };
}

function totalRow(children: number): DraftRow {
  return {
    cells: ["Total", null, children],
    faults: [fault(COLUMN.child, "total-row", "row of totals", "The row is left out and listed.")],
  };
}
