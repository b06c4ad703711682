import type { Day } from "../../age/day";
import { CHILD_COLUMN as COLUMN, faultyChildRows } from "./child-rows";
import type { SampleTable } from "../tables";
import { columnsOf, type Draft, type DraftRow, fault, soundRows, spread } from "./draft";
import { HOST } from "./people";
import { faultyObservations } from "./observations";
import { faultyRatings } from "./ratings";
import { faultyReferrals } from "./referrals";
import { faultySigns } from "./signs";
import { faultySkills } from "./skills";

/** The same program as a real office might keep it: every usual fault of a spreadsheet, each planted on purpose and listed. */
export function plantFaults(tables: readonly SampleTable[], last: Day): Draft[] {
  const table = (name: string): SampleTable => {
    const found = tables.find((each) => each.name === name);
    if (!found) throw new RangeError(`plantFaults: there is no table ${name}`);
    return found;
  };
  return [
    faultyChildren(table("Children"), last),
    faultyObservations(table("Observations"), last),
    faultySkills(table("Skills")),
    faultyReferrals(table("Referrals"), last),
    faultySigns(table("Signs"), last),
    faultyRatings(table("Ratings"), last),
    wideSheet(last),
  ];
}

/** An older sheet with a row a child and a column a skill, kept beside the long table. */
function wideSheet(last: Day): Draft {
  return {
    name: "Old sheet",
    columns: columnsOf(4, [1, 2, 3]),
    above: [],
    headings: [
      {
        cells: ["Child", "walk-alone", "Tries a word or two beyond the names for parents", "two-words"],
        faults: [
          fault(1, null, "a column a skill", "Each filled cell is an observation."),
          fault(2, null, "label in place of the id in a heading", "Read as the skill."),
        ],
      },
    ],
    rows: [
      { cells: [HOST, last - 120, last - 60, null] },
      {
        cells: ["AF-9030", last - 90, null, "met"],
        faults: [fault(3, "result-needs-date", "a word without a date", "Left out: the sheet has no column Date.")],
      },
    ],
    excelTable: false,
  };
}

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
function faultyChildren(table: SampleTable, last: Day): Draft {
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
