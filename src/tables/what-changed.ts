import type { TableContext } from "./context";
import type { Table, TableColumn, TableValue } from "./table";
import type { CellName, Changes } from "./what-changed/changed-cell";
import { type Part, PARTS } from "./what-changed/parts";

export const PART_LABELS: Readonly<Record<Part, string>> = {
  enteredLate: "Entered late",
  corrected: "Corrected",
  removed: "Removed",
  definition: "Definition",
  joined: "Joined",
  left: "Left",
  grewIn: "Grew into the group",
  grewOut: "Grew out of the group",
  metSince: "Met since",
  lost: "Lost",
  needsRecheck: "Needs a recheck",
  checkedAgain: "Checked again",
};

const CELL_COLUMNS: readonly TableColumn[] = [
  { key: "table", label: "Table", unit: "text" },
  { key: "skill", label: "Skill", unit: "text" },
  { key: "area", label: "Area", unit: "text" },
  { key: "band", label: "Age group", unit: "text" },
  { key: "measure", label: "Count", unit: "text" },
];

/** Why every count of met-by-band is not what it was in the earlier run (METHOD.md, section 6). */
export function whatChanged(context: TableContext): Table<"what-changed"> {
  const { columns, cells, isFromReport } = changesOf(context);
  return {
    id: "what-changed",
    title: "What changed since the earlier figures, cause by cause",
    population: "Children in the program on the earlier day, on the later day, or on both",
    columns: [
      ...columns,
      ...CELL_COLUMNS,
      { key: "earlier", label: "Earlier", unit: "count" },
      ...PARTS.map((part): TableColumn => ({ key: part, label: PART_LABELS[part], unit: "count" })),
      { key: "later", label: "Later", unit: "count" },
    ],
    rows: cells.map((cell) => [...nameOf(cell), cell.measure, cell.earlier, ...cell.parts, cell.later]),
    notes: isFromReport ? [...NOTES, ...FROM_REPORT] : NOTES,
  };
}

/** Each child behind each part of each count: internal, made only when it is named. */
export function whatChangedChildren(context: TableContext): Table<"what-changed-children"> {
  const { columns, behind, isFromReport } = changesOf(context);
  return {
    id: "what-changed-children",
    title: "The children behind each part of a change (internal)",
    population: "Children in the program on the earlier day, on the later day, or on both",
    columns: [
      { key: "child", label: "Child", unit: "text" },
      ...columns,
      ...CELL_COLUMNS,
      { key: "part", label: "Part", unit: "text" },
      { key: "change", label: "Change", unit: "count" },
    ],
    rows: behind.map((each) => [each.child, ...nameOf(each), each.measure, each.part, each.change]),
    notes: isFromReport ? [NOTES[0] as string, ...FROM_REPORT] : [NOTES[0] as string],
    internal: true,
  };
}

function nameOf({ group, skill, area, band }: CellName): TableValue[] {
  return [...group, "met-by-band", skill, area, band];
}

/** @throws {RangeError} where no earlier run was given */
function changesOf({ records }: TableContext): Changes {
  if (!records.changes) throw new RangeError("What changed is told between two runs: give an earlier one.");
  return records.changes;
}

const NOTES: readonly string[] = [
  "Earlier plus all parts is later, in every row. A part is the sum over children of what each did; a child that did two things at one step counts under the first column.",
  "Entered late, corrected and removed: what the later workbook says otherwise about the earlier day. Definition: other settings or another list of skills. The rest: what happened between the two days.",
  "Entered late is something that was not there and now is, removed is something that no longer is, corrected is something that is there in both and differs. A row that cannot be used counts as not there.",
  'Rows with skill "all" add up the skills of an area: they count skill checks, not children.',
  "A change of a share is given by its two counts, met and up-to-date checks.",
];

const FROM_REPORT: readonly string[] = [
  "The earlier figures come from a report, which says how many and never who. So the column Corrected is all that was entered late, corrected or removed since, together, and the columns Entered late and Removed are empty.",
  "The earlier report does not say on which age its skills were read, nor which skill replaces which: today's list is taken for both.",
];
