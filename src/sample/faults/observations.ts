import { type Day, isoOf } from "../../age/day";
import type { CellOut } from "../../workbook/sheets";
import type { SampleTable } from "../tables";
import { type CellFault, columnsOf, type Draft, type DraftRow, fault, soundRows, spread } from "./draft";
import { BIRTH_CONFLICT, carrierOn, HOST, LEAVER, NO_BIRTH, NUMERIC, SPACED, STRANGER } from "./people";

const COLUMN = { child: 0, skill: 1, date: 2, result: 3, observer: 4, entered: 5 } as const;
type Change = Partial<Record<keyof typeof COLUMN, CellOut>>;

/** Observations as an Excel table, with every fault of ids, skills, dates and results. */
export function faultyObservations(table: SampleTable, last: Day): Draft {
  const faulty = [...idFaults(last), ...skillFaults(last), ...dateFaults(last), ...resultFaults(last), { cells: [] }];
  const total = fault(COLUMN.child, "total-row", "row of totals", "The row is left out and listed.");
  return {
    name: "Observations",
    columns: columnsOf(table.headings.length, [COLUMN.date, COLUMN.entered]),
    above: [],
    headings: [{ cells: table.headings }],
    rows: [...spread(soundRows(table), faulty), { cells: ["TOTAL", null, null, table.rows.length], faults: [total] }],
    excelTable: true,
  };
}

/** A look at the child that carries the faults, some days before the end. */
function look(last: Day, daysBefore: number, change: Change, ...faults: readonly CellFault[]): DraftRow {
  const day = last - daysBefore;
  const cells: CellOut[] = [HOST, "run", day, "not met", "T01", day + 1];
  for (const [key, value] of Object.entries(change)) cells[COLUMN[key as keyof typeof COLUMN]] = value as CellOut;
  return { cells, faults };
}

function idFaults(last: Day): DraftRow[] {
  const { child } = COLUMN;
  const leftOut = fault(child, "child-left-out", "row of a child who is left out", "Counts when the child is settled.");
  return [
    look(last, 300, { child: "af-9004\u00A0" }, fault(child, null, "id in small letters, with a hard space", "Read.")),
    look(last, 299, { child: "ＡＦ－９００４" }, fault(child, null, "id in full-width characters", "Read.")),
    look(last, 298, { child: `\u200B${SPACED}` }, fault(child, null, "zero-width space in an id", "Read.")),
    look(last, 297, { child: Number(NUMERIC) }, fault(child, null, "id as a number", "It equals its text.")),
    look(last, 296, { child: STRANGER }, fault(child, "child-unknown", "child not in Children", "Left out.")),
    look(last, 295, { child: null }, fault(child, "child-blank", "no child", "Left out.")),
    look(
      last,
      294,
      { child: { value: last - 30, format: "date" } },
      fault(child, "id-is-date", "id turned into a date", "Left out."),
    ),
    look(last, 293, { child: BIRTH_CONFLICT }, leftOut),
    look(last, 292, { child: NO_BIRTH }, leftOut),
  ];
}

function skillFaults(last: Day): DraftRow[] {
  const { skill } = COLUMN;
  return [
    look(last, 280, { skill: " RUN " }, fault(skill, null, "skill in capitals, with spaces", "Read.")),
    look(
      last,
      279,
      { skill: "Breaks into a run" },
      fault(skill, null, "label in place of the id", "Read as the skill."),
    ),
    look(
      last,
      278,
      { skill: "running about" },
      fault(skill, "skill-unknown", "skill by another name", "Left out until a decision names it."),
    ),
    look(last, 277, { skill: null }, fault(skill, "skill-blank", "no skill", "Left out.")),
    look(
      last,
      276,
      { skill: "turn-page" },
      fault(skill, "skill-left-out", "skill whose row is left out", "Counts when Skills is corrected."),
    ),
  ];
}

function dateFaults(last: Day): DraftRow[] {
  const { date, entered } = COLUMN;
  const { birth } = carrierOn(last);
  return [
    look(last, 260, { date: "14/02/26" }, fault(date, "date-two-digit-year", "year of two digits", "Left out.")),
    look(last, 259, { date: birth - 3, entered: null }, fault(date, "date-before-birth", "before birth", "Left out.")),
    look(
      last,
      258,
      { date: last + 12, entered: null },
      fault(date, "date-after-as-of", "after the last day", "Left out."),
    ),
    look(
      last,
      257,
      { child: LEAVER, date: last - 40, entered: null },
      fault(date, "outside-enrolment", "after leaving", "Used and listed."),
    ),
    look(last, 256, { date: null }, fault(date, "date-blank", "no date", "Left out.")),
    look(last, 255, { date: "soon after lunch" }, fault(date, "date-unreadable", "words for a date", "Left out.")),
    look(
      last,
      254,
      { date: last - 254 + 0.625 },
      fault(date, "date-time-dropped", "time of day in a date", "The time is dropped."),
    ),
    look(
      last,
      253,
      { date: "04/02/2026", entered: null },
      fault(date, "date-order-unknown", "text date that proves no order", "Left out until monthFirst is set."),
    ),
    look(last, 252, { date: isoOf(last - 252), entered: null }, fault(date, null, "date as ISO text", "Read.")),
    look(
      last,
      251,
      { entered: last - 270 },
      fault(entered, "entered-before-seen", "typed in before it was seen", "Used and listed."),
    ),
  ];
}

function resultFaults(last: Day): DraftRow[] {
  const { result, child } = COLUMN;
  const differ = fault(result, "results-differ", "two observers who disagree", "The day counts as not met.");
  const copy = fault(child, "exact-copy", "row copied", "The copy is left out.");
  return [
    look(last, 240, { result: "NOT MET" }, fault(result, null, "result in capitals", "Read.")),
    look(last, 239, { result: " Not yet " }, fault(result, null, "another word for a result", "Read as not met.")),
    look(last, 238, { result: "N/O" }, fault(result, "result-unknown", "result that is none of the four", "Left out.")),
    look(last, 237, { result: null }, fault(result, "result-blank", "no result", "Left out.")),
    look(last, 236, { result: "#N/A" }, fault(result, "result-unknown", "#N/A pasted as text", "Left out.")),
    look(last, 235, {}),
    look(last, 235, {}, copy),
    look(last, 234, { skill: "wave", result: "met" }),
    look(last, 234, { skill: "wave", observer: "T02" }, differ),
    look(
      last,
      233,
      { observer: "=T01" },
      fault(COLUMN.observer, null, "code that starts like a formula", "Kept as text."),
    ),
  ];
}
