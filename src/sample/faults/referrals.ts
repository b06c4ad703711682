import { calendarOf, type Day, dayOf } from "../../age/day";
import type { CellOut } from "../../workbook/sheets";
import type { SampleTable } from "../tables";
import { columnsOf, type Draft, type DraftRow, fault, soundRows, spread } from "./draft";
import { HOST, STRANGER } from "./people";
import { dayFirst } from "./text-dates";

const REFERRAL = { child: 0, area: 2, received: 6, evaluated: 7, eligible: 8, plan: 9, late: 10, closed: 11 } as const;

/** Referrals whose last column was imported with day and month swapped, and faults of areas and steps. */
export function faultyReferrals(table: SampleTable, last: Day): Draft {
  const rows = spread(soundRows(table), referralFaults(last));
  return {
    name: "Referrals",
    columns: columnsOf(table.headings.length, [1, 6, 7, 9, 11]),
    above: [],
    headings: [{ cells: table.headings }],
    rows: rows.map((row) => ({
      ...row,
      cells: row.cells.map((cell, at) => (at === REFERRAL.closed ? swapped(cell) : cell)),
    })),
    columnFaults: [
      fault(REFERRAL.closed, "date-column-swapped", "day and month swapped by an import", "The column is not used."),
    ],
    excelTable: true,
  };
}

function referralFaults(last: Day): DraftRow[] {
  const day = last - 200;
  const { year, month } = calendarOf(last - 100);
  const referral = (daysLater: number, change: Partial<Record<keyof typeof REFERRAL, CellOut>>): CellOut[] => {
    const on = day + daysLater;
    const cells: CellOut[] = [
      HOST,
      on,
      "speech",
      "few words",
      "clinic",
      "clinic",
      on + 1,
      on + 20,
      "yes",
      on + 30,
      null,
      null,
    ];
    for (const [key, value] of Object.entries(change)) cells[REFERRAL[key as keyof typeof REFERRAL]] = value as CellOut;
    return cells;
  };
  const at = REFERRAL;
  return [
    {
      cells: referral(0, { area: "handwriting" }),
      faults: [fault(at.area, "area-unknown", "area that is not known", "Left out.")],
    },
    {
      cells: referral(1, { area: "Speech;Sensory" }),
      faults: [fault(at.area, null, "areas in another case, no space", "Read.")],
    },
    {
      cells: referral(2, { evaluated: day - 5 }),
      faults: [fault(at.evaluated, "evaluated-before-referred", "evaluated before referred", "Left out.")],
    },
    {
      cells: referral(3, { plan: day + 15 }),
      faults: [fault(at.plan, "plan-before-evaluation", "plan before the evaluation", "Used and listed.")],
    },
    {
      cells: referral(4, { eligible: "maybe" }),
      faults: [fault(at.eligible, "word-unknown", "neither yes nor no", "Read as blank.")],
    },
    {
      cells: referral(5, { child: STRANGER }),
      faults: [fault(at.child, "child-unknown", "child not in Children", "Left out.")],
    },
    { cells: referral(6, {}) },
    { cells: referral(7, { closed: dayOf(year, month, 5) }) },
    { cells: referral(8, { closed: dayOf(year, month, 20) }) },
    { cells: referral(6, {}), faults: [fault(at.child, "exact-copy", "row copied", "The copy is left out.")] },
  ];
}

/** What a program that expects the month first makes of a text with the day first: a wrong date, or a text. */
function swapped(cell: CellOut): CellOut {
  if (typeof cell !== "number") return cell;
  const { year, month, dayOfMonth } = calendarOf(cell);
  return dayOfMonth <= 12 ? dayOf(year, dayOfMonth, month) : dayFirst(cell);
}
