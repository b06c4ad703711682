import { BOX_LABELS } from "../../src/cohort/boxes";
import { headingKey, keyOf } from "../../src/records/cells/words";
import { PART_LABELS } from "../../src/tables/what-changed";
import { PARTS } from "../../src/tables/what-changed/parts";
import { type StatusRow, statusChanges } from "../../src/tables/what-changed/status-changes";
import type { AnswerCell } from "../answer";
import { CellFailure, inRow, invalid } from "../failure";
import { type InCell, isBlank, isEmpty, rangeOf } from "./cells";
import { edgesOf } from "./edges";
import { numberFrom } from "./values";

/** What the days of a status alone cannot tell: it would look like something that happened between them. */
const TOLD = PARTS.filter((part) => part !== "enteredLate" && part !== "removed");
const HEADER = ["Skill", "Area", "Age group", "Count", "Earlier", ...TOLD.map((part) => PART_LABELS[part]), "Later"];

export function changedCells(earlier: unknown, later: unknown, edges: unknown): AnswerCell[][] {
  const cells = statusChanges(statusFrom(earlier, "earlier"), statusFrom(later, "later"), edgesOf(edges));
  return [
    HEADER,
    ...cells.map(({ skill, area, band, measure, earlier: before, parts, later: now }) => [
      ...[skill, area, band, measure, before],
      ...TOLD.map((part) => parts[PARTS.indexOf(part)] ?? null),
      now,
    ]),
  ];
}

/** The columns of skill-status, by their headings; the sheet of a report heads the age as "Age". */
const HEADINGS = { child: "Child", skill: "Skill", area: "Area", age: "Age (months)", box: "Box" } as const;
type ColumnName = keyof typeof HEADINGS;
const NAMES = Object.keys(HEADINGS) as ColumnName[];

function statusFrom(argument: unknown, name: string): StatusRow[] {
  const range = rangeOf(argument, name);
  const at = columnsOf(range[0] ?? [], name);
  const seen = new Set<string>();
  return range.flatMap((row, index) => {
    if (index === 0 || row.every(isEmpty)) return [];
    try {
      const found = rowFrom(row, at, name);
      const key = JSON.stringify([found.child, found.skill].map(keyOf));
      if (seen.has(key)) throw invalid(`${name} has this child and skill twice: give the status of one day.`);
      seen.add(key);
      return [found];
    } catch (thrown) {
      throw thrown instanceof CellFailure ? inRow(index + 1, thrown) : thrown;
    }
  });
}

function columnsOf(headings: readonly InCell[], name: string): Readonly<Record<ColumnName, number>> {
  const keys = headings.map((heading) => headingKey(String(heading ?? "")));
  const placeOf = (column: ColumnName) =>
    keys.findIndex((key) => key === headingKey(HEADINGS[column]) || key === column);
  const missing = NAMES.find((column) => placeOf(column) < 0);
  if (missing) {
    throw invalid(`${name} has no column ${HEADINGS[missing]}: give what SKILLSTATUS spills, with its headings.`);
  }
  return Object.fromEntries(NAMES.map((column) => [column, placeOf(column)])) as Record<ColumnName, number>;
}

function rowFrom(row: readonly InCell[], at: Readonly<Record<ColumnName, number>>, name: string): StatusRow {
  const textOf = (column: ColumnName) => {
    const cell = row[at[column]] ?? null;
    if (isBlank(cell)) throw invalid(`${name} has no ${HEADINGS[column]}: give the whole row.`);
    return String(cell);
  };
  const box = (BOX_LABELS as readonly string[]).indexOf(keyOf(textOf("box")));
  if (box < 0) throw invalid(`${name}: Box must be one of ${BOX_LABELS.join(", ")}.`);
  const ageMonths = numberFrom(row[at.age] ?? null, "Age (months)");
  return { child: textOf("child"), skill: textOf("skill"), area: textOf("area"), ageMonths, box };
}
