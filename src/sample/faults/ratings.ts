import type { Day } from "../../age/day";
import type { CellOut } from "../../workbook/sheets";
import type { SampleTable } from "../tables";
import { columnsOf, type Draft, type DraftRow, fault, soundRows, spread } from "./draft";
import { HOST } from "./people";

const RATING = { child: 0, outcome: 1, entryDate: 2, entry: 3, exitDate: 4, exit: 5, fresh: 6 } as const;

/** Ratings under two rows of headings, the upper one merged, and faults of levels and their dates. */
export function faultyRatings(table: SampleTable, last: Day): Draft {
  return {
    name: "Ratings",
    columns: columnsOf(table.headings.length, [RATING.entryDate, RATING.exitDate]),
    above: [],
    headings: [
      { cells: ["Child", "Outcome", "Entry", null, "Exit", null, "Gained any skill"] },
      {
        cells: [null, null, "date", "level", "date", "level", null],
        faults: [
          fault(RATING.entryDate, null, "two rows of headings, the upper one merged", "Both are read together."),
        ],
      },
    ],
    merged: [
      { row: 0, left: RATING.entryDate, right: RATING.entry },
      { row: 0, left: RATING.exitDate, right: RATING.exit },
    ],
    rows: spread(soundRows(table), ratingFaults(last)),
    excelTable: false,
  };
}

function ratingFaults(last: Day): DraftRow[] {
  const rating = (outcome: string, change: Partial<Record<keyof typeof RATING, CellOut>>): CellOut[] => {
    const cells: CellOut[] = [HOST, outcome, last - 390, 3, last - 20, 5, "yes"];
    for (const [key, value] of Object.entries(change)) cells[RATING[key as keyof typeof RATING]] = value as CellOut;
    return cells;
  };
  const at = RATING;
  return [
    {
      cells: rating("Outcome 1", { exit: 8 }),
      faults: [fault(at.exit, "rating-illegal", "rating over 7", "Left out.")],
    },
    {
      cells: rating("Outcome 2", { entry: 3.5 }),
      faults: [fault(at.entry, "rating-illegal", "half a rating", "Left out.")],
    },
    {
      cells: rating("Outcome 3", { exitDate: last - 395 }),
      faults: [fault(at.exitDate, "exit-before-entry", "exit before entry", "Left out.")],
    },
    { cells: rating("Outcome 4", { exit: 0 }), faults: [fault(at.exit, null, "0 in an empty cell", "Read as blank.")] },
    { cells: rating("Outcome 5", { exitDate: "25/08/2026" }), faults: [contradicts(at.exitDate)] },
    { cells: rating("Outcome 6", { exitDate: "08/26/2026" }), faults: [contradicts(at.exitDate)] },
    { cells: rating("Outcome 7", {}) },
    {
      cells: rating("Outcome 7", { exit: 4 }),
      faults: [fault(at.outcome, "rating-twice", "two rows for one outcome", "Both are used and listed.")],
    },
  ];
}

function contradicts(column: number) {
  return fault(column, "cell-not-read", "text dates that contradict each other", "Read as blank.");
}
