import { calendarOf, type Day, dayOf } from "../../age/day";
import type { CellOut } from "../../workbook/sheets";
import type { SampleTable } from "../tables";
import { columnsOf, type Draft, type DraftRow, fault, soundRows, spread } from "./draft";
import { HOST } from "./people";
import { dayFirst } from "./text-dates";

const SIGN = { date: 1, seen: 3 } as const;

/** Signs with their dates typed as text, the day first, which the column itself proves. */
export function faultySigns(table: SampleTable, last: Day): Draft {
  const { year, month } = calendarOf(last - 100);
  const host: DraftRow[] = [
    { cells: [HOST, dayOf(year, month, 20), "very floppy body", "absent", null] },
    {
      cells: [HOST, last - 210, "very stiff body", "a little", null],
      faults: [fault(SIGN.seen, "seen-unknown", "none of the three words", "Left out.")],
    },
    {
      cells: [HOST, last - 209, "very stiff body", "YES", null],
      faults: [fault(SIGN.seen, null, "another word for present", "Read.")],
    },
  ];
  return {
    name: "Signs",
    columns: columnsOf(table.headings.length, [4]),
    above: [],
    headings: [
      {
        cells: table.headings,
        faults: [fault(SIGN.date, null, "dates as text, the day first", "The column proves its order and is read.")],
      },
    ],
    rows: spread(soundRows(table), host).map(({ cells, ...row }) => ({ ...row, cells: cells.map(textDate) })),
    excelTable: true,
  };
}

function textDate(cell: CellOut, column: number): CellOut {
  return column === SIGN.date && typeof cell === "number" ? dayFirst(cell) : cell;
}
