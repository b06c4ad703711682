import type { ReleasedTable } from "../../release/release-table";
import { isHidden, isRange } from "../../release/words/read-released";
import type { TableColumn } from "../../tables/table";

export interface CountsPrinted {
  readonly counts: number;
  /** The symbol, or a range, in place of the count. */
  readonly heldBack: number;
}

/** How many counts the tables have room for, and how many of them do not stand there as they are. */
export function countsPrinted(tables: readonly ReleasedTable[]): CountsPrinted {
  const values = tables.flatMap(({ columns, rows }) =>
    columns.flatMap((column, at) => (isCount(column) ? rows.map((row) => row[at] ?? null) : [])),
  );
  const counts = values.filter((value) => value !== null);
  return { counts: counts.length, heldBack: counts.filter((value) => isHidden(value) || isRange(value)).length };
}

const UNITS: ReadonlySet<string> = new Set(["children", "child-skills", "count"]);

/** The number of a summary statement is a name. */
function isCount({ key, unit }: TableColumn): boolean {
  return UNITS.has(unit) && key !== "statement";
}
