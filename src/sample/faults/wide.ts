import type { Day } from "../../age/day";
import { columnsOf, type Draft, fault } from "./draft";
import { HOST } from "./people";

/** An older sheet with a row a child and a column a skill, kept beside the long table. */
export function wideSheet(last: Day): Draft {
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
