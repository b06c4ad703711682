import { calendarOf, type Day, dayOf } from "../../age/day";
import type { CellOut } from "../../workbook/sheets";
import { type DraftRow, fault } from "./draft";
import {
  BIRTH_CONFLICT,
  carrierOn,
  HOST,
  LEAVER,
  LEAVER_LEFT_DAYS_BEFORE_END,
  NO_BIRTH,
  NUMERIC,
  SPACED,
} from "./people";

export const CHILD_COLUMN = { child: 0, birth: 1, gestation: 2, site: 3, enrolled: 5, left: 6, language: 8 } as const;

/** Rows of Children with faults of ids, births, gestations and enrolments. */
export function faultyChildRows(last: Day): DraftRow[] {
  const { birth, enrolled } = carrierOn(last);
  const child = (id: CellOut, change: Partial<Record<keyof typeof CHILD_COLUMN, CellOut>> = {}): CellOut[] => {
    const cells: CellOut[] = [id, birth, "39+0", "North", "T01", enrolled, null, null, "L1"];
    for (const [key, value] of Object.entries(change))
      cells[CHILD_COLUMN[key as keyof typeof CHILD_COLUMN]] = value as CellOut;
    return cells;
  };
  return [
    { cells: child(HOST) },
    { cells: child(LEAVER, { left: last - LEAVER_LEFT_DAYS_BEFORE_END }) },
    {
      cells: child(NUMERIC),
      faults: [fault(CHILD_COLUMN.child, null, "number kept as text", "It equals the number.")],
    },
    {
      cells: child(` ${SPACED}\u200B `),
      faults: [fault(CHILD_COLUMN.child, null, "outer and zero-width spaces in an id", "They do not count.")],
    },
    {
      cells: child(HOST),
      faults: [fault(CHILD_COLUMN.child, "exact-copy", "row copied", "The copy is left out and listed.")],
    },
    { cells: [] },
    ...birthFaults(child, birth),
    ...gestationFaults(child, last),
    ...enrolmentFaults(child, birth, enrolled, last),
    {
      cells: child("AF-9030", { language: "=1+1" }),
      faults: [fault(CHILD_COLUMN.language, null, "text that starts like a formula", "It is kept as text.")],
    },
  ];
}

type ChildRow = (id: CellOut, change?: Partial<Record<keyof typeof CHILD_COLUMN, CellOut>>) => CellOut[];

function birthFaults(child: ChildRow, birth: Day): DraftRow[] {
  const { birth: column } = CHILD_COLUMN;
  const conflict = fault(
    column,
    "birth-conflict",
    "two birth dates of one child",
    "The child is left out until settled.",
  );
  return [
    { cells: child(BIRTH_CONFLICT), faults: [conflict] },
    { cells: child(BIRTH_CONFLICT, { birth: birth + 1, site: "Hill" }), faults: [conflict] },
    {
      cells: child(NO_BIRTH, { birth: null }),
      faults: [fault(column, "birth-blank", "no birth date", "The child is left out.")],
    },
    {
      cells: child("AF-9007", { birth: twoDigitYear(birth) }),
      faults: [fault(column, "date-two-digit-year", "birth date with a year of two digits", "The row is left out.")],
    },
    {
      cells: child("AF-9008", { birth: "31.02.2025" }),
      faults: [fault(column, "date-unreadable", "a day that the calendar does not have", "The row is left out.")],
    },
  ];
}

function gestationFaults(child: ChildRow, last: Day): DraftRow[] {
  const { gestation: column } = CHILD_COLUMN;
  const conflict = fault(column, "gestation-conflict", "two gestations of one child", "Not corrected until settled.");
  const march28 = { value: dayOf(calendarOf(last).year, 3, 28), format: "date" } as const;
  return [
    { cells: child("AF-9010", { gestation: "30+1", left: last - 250 }), faults: [conflict] },
    { cells: child("AF-9010", { gestation: "31+1", enrolled: last - 200 }), faults: [conflict] },
    {
      cells: child("AF-9011", { gestation: 28.3 }),
      faults: [
        fault(column, "gestation-undecided", "bare decimal", "Used, not corrected until gestationDecimals is set."),
      ],
    },
    {
      cells: child("AF-9012", { gestation: march28 }),
      faults: [fault(column, "gestation-is-date", "28/3 turned into a date", "Used and not corrected.")],
    },
    {
      cells: child("AF-9013", { gestation: "52+0" }),
      faults: [fault(column, "gestation-illegal", "gestation out of range", "Used and not corrected.")],
    },
  ];
}

function enrolmentFaults(child: ChildRow, birth: Day, enrolled: Day, last: Day): DraftRow[] {
  const at = CHILD_COLUMN;
  return [
    {
      cells: child("AF-9020", { left: enrolled - 30 }),
      faults: [fault(at.left, "left-before-enrolled", "left before enrolled", "The row is left out.")],
    },
    { cells: child("AF-9021", { left: last - 50 }) },
    {
      cells: child("AF-9021", { enrolled: last - 80, site: "River" }),
      faults: [fault(at.enrolled, "enrolment-overlap", "enrolments overlap", "The later begun counts where they do.")],
    },
    {
      cells: child("AF-9022", { enrolled: birth - 10 }),
      faults: [fault(at.enrolled, "enrolled-before-birth", "enrolled before birth", "Followed from birth.")],
    },
    {
      cells: child("AF-9023", { enrolled: enrolled + 0.4375 }),
      faults: [fault(at.enrolled, "date-time-dropped", "a time of day in a date", "The time is dropped.")],
    },
    {
      cells: child("AF-9024", { enrolled: null }),
      faults: [fault(at.enrolled, "enrolled-blank", "no day of enrolment", "Followed from the first observation.")],
    },
    {
      cells: child("AF-9025", { left: enrolled }),
      faults: [fault(at.left, "left-on-enrolment", "left on the day of enrolment", "Followed on no day.")],
    },
  ];
}

function twoDigitYear(day: Day): string {
  const { year, month, dayOfMonth } = calendarOf(day);
  return `${dayOfMonth}.${month}.${String(year).slice(2)}`;
}
