import type { Table } from "../../tables/table";
import { readTable, type Row, type TableReader } from "./read-table";

/** Child-skills of an area at the end of a quarter. */
export interface QuarterCell {
  readonly met: number;
  readonly of: number;
}

export interface GroupLine {
  /** The values of the grouping columns; empty without grouping. */
  readonly name: string;
  /** One a quarter. */
  readonly cells: readonly QuarterCell[];
}

export interface AreaLines {
  readonly area: string;
  readonly groups: readonly GroupLine[];
}

/** The skills of each area added up, quarter by quarter; areas in which nobody has a current look are left out. */
export function areaLines(table: Table, quarters: readonly string[]): AreaLines[] {
  const read = readTable(table);
  const areas = [...new Set(table.rows.map((row) => read.text(row, "area")))];
  const groups = [...new Set(table.rows.map((row) => groupOf(read, row)))];
  return areas
    .map((area) => ({ area, groups: groups.map((name) => groupLine(table, read, area, quarters, name)) }))
    .filter((each) => each.groups.some(({ cells }) => cells.some(({ of }) => of > 0)));
}

function groupLine(
  table: Table,
  read: TableReader,
  area: string,
  quarters: readonly string[],
  name: string,
): GroupLine {
  const rows = table.rows.filter((row) => read.text(row, "area") === area && groupOf(read, row) === name);
  const cells = quarters.map((quarter) => {
    const own = rows.filter((row) => read.text(row, "quarter") === quarter);
    return { met: read.sum(own, "met"), of: read.sum(own, "assessed") };
  });
  return { name, cells };
}

/** The grouping columns come before the quarter. */
function groupOf(read: TableReader, row: Row): string {
  return read.group(row).slice(0, -1).join(", ");
}
