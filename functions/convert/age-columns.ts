import { type AgeColumns, allExactOrLater } from "../../src/statistics/age-kinds";
import { type CellFailure, invalid } from "../failure";
import { columnOf, type InCell, isBlank, isEmpty, isLeftOut } from "./cells";
import { eachRow } from "./each-row";
import { numberFrom, numberOrBlank, wordFrom } from "./values";

export interface AgeArguments {
  readonly after: unknown;
  readonly by: unknown;
  readonly entry?: unknown;
  readonly group?: unknown;
}

interface AgeRow {
  readonly after: number;
  readonly by: number;
  readonly entry: number;
  readonly group: string;
}

interface Cells {
  readonly after: InCell;
  readonly by: InCell;
  readonly entry: InCell;
  readonly group: InCell;
}

/** Ages in the unit given, one row a child, and the group of each where groups are asked for. Blank rows are no children. */
export function ageColumnsOf(args: AgeArguments): AgeColumns & { readonly group: readonly string[] } {
  const hasEntry = !isLeftOut(args.entry);
  const cells = rowsOf(args, hasEntry);
  const zeros = zerosIn(cells);
  const read = eachRow(cells, (row, at) => (isBlankRow(row, at, zeros) ? null : rowFrom(row, "group" in args, zeros)));
  const rows = read.filter((row) => row !== null);
  const column = (key: "after" | "by" | "entry") => Float64Array.from(rows, (row) => row[key]);
  const columns = { after: column("after"), by: column("by"), ...(hasEntry ? { entry: column("entry") } : {}) };
  if (hasEntry && !allExactOrLater(columns)) throw entryBesideIntervals(read);
  refuseLateEntry(read);
  return { ...columns, group: rows.map((row) => row.group) };
}

function rowsOf(args: AgeArguments, hasEntry: boolean): Cells[] {
  const columns = {
    after: columnOf(args.after, "after"),
    by: columnOf(args.by, "by"),
    entry: hasEntry ? columnOf(args.entry, "entry") : [null],
    group: "group" in args ? columnOf(args.group, "group") : [null],
  };
  const rows = Math.max(...Object.values(columns).map((cells) => cells.length));
  for (const [name, cells] of Object.entries(columns)) {
    if (cells.length !== 1 && cells.length !== rows) {
      throw invalid(`${name} has ${cells.length} rows where others have ${rows}: give all columns the same.`);
    }
  }
  const cellAt = (cells: readonly InCell[], row: number) => cells[cells.length === 1 ? 0 : row] ?? null;
  return Array.from({ length: rows }, (_, row) => ({
    after: cellAt(columns.after, row),
    by: cellAt(columns.by, row),
    entry: cellAt(columns.entry, row),
    group: cellAt(columns.group, row),
  }));
}

/**
 * What the zeros of `by` are. Where a cell is null the host knows its empty cells, and 0 is an age. Where one holds "",
 * it is an age down to the last row that holds anything else. Otherwise 0 is an empty cell.
 */
interface Zeros {
  readonly areAges: boolean;
  readonly last: number;
}

function zerosIn(rows: readonly Cells[]): Zeros {
  const knowsEmpty = rows.some(({ by }) => by === null);
  return {
    areAges: rows.some(({ by }) => isBlank(by)),
    last: knowsEmpty ? rows.length - 1 : rows.findLastIndex((row) => !isAllEmpty(row)),
  };
}

function isAllEmpty({ after, by, entry, group }: Cells): boolean {
  return [after, by, entry, group].every(isEmpty);
}

/** A child last seen without the skill at the age of 0 is a row: `after` 0 beside a `by` that is blank. */
function isBlankRow(row: Cells, at: number, zeros: Zeros): boolean {
  if (!isAllEmpty(row)) return false;
  return row.by === 0 ? !zeros.areAges || at > zeros.last : isBlank(row.after);
}

/** A blank `after` is 0. A `by` of 0 ends an interval that begins below 0; beside an `after` above 0 it is an empty cell. */
function rowFrom(cells: Cells, hasGroup: boolean, zeros: Zeros): AgeRow {
  const after = numberOrBlank(cells.after, "after") ?? 0;
  const isEmptyZero = cells.by === 0 && (after > 0 || (after === 0 && !zeros.areAges));
  const by = isBlank(cells.by) || isEmptyZero ? Infinity : numberFrom(cells.by, "by");
  if (by < after) throw invalid("by is below after: the skill was met after one age and by a later one.");
  if (hasGroup && isEmpty(cells.group)) throw invalid("group is empty: name the child's group.");
  return { after, by, entry: entryFrom(cells.entry, after), group: wordFrom(cells.group) };
}

/** An `entry` of 0 beside an age of 0 or below is an empty cell. */
function entryFrom(cell: InCell, after: number): number {
  const entry = numberOrBlank(cell, "entry") ?? -Infinity;
  return entry === 0 && after <= 0 ? -Infinity : entry;
}

/** Such a child was never watched, and must not be left out unseen. */
function refuseLateEntry(rows: readonly (AgeRow | null)[]): void {
  const row = rows.findIndex((each) => each !== null && each.entry >= each.after) + 1;
  if (row === 0) return;
  throw invalid(
    `Row ${row}: entry is not below the age: a child counts from the entry on, so the age must come after it.`,
  );
}

function entryBesideIntervals(rows: readonly (AgeRow | null)[]): CellFailure {
  const row = rows.findIndex((each) => each !== null && each.by !== Infinity && each.by !== each.after) + 1;
  return invalid(
    `Row ${row}: entry takes ages that are exact (after equal to by) or not met (by blank), not ages between two checks.`,
  );
}
