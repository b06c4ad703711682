import type { Table, TableColumn, TableValue } from "../../tables/table";

export type Row = readonly TableValue[];

/** Reads the cells of a table by the keys of its columns. */
export interface TableReader {
  has(key: string): boolean;
  /** True where the cell says yes. */
  flag(row: Row, key: string): boolean;
  number(row: Row, key: string): number | null;
  text(row: Row, key: string): string;
  sum(rows: readonly Row[], key: string): number;
  /** The columns that group the rows: those before `skill`. */
  readonly groupColumns: readonly TableColumn[];
  group(row: Row): string[];
}

/** @throws {RangeError} when a column that is asked for is not there */
export function readTable(table: Table): TableReader {
  const position = new Map(table.columns.map((column, index) => [column.key, index]));
  const at = (row: Row, key: string): TableValue => {
    const index = position.get(key);
    if (index === undefined) throw new RangeError(`The table ${table.id} has no column ${key}.`);
    return row[index] ?? null;
  };
  const number = (row: Row, key: string): number | null => {
    const value = at(row, key);
    return typeof value === "number" ? value : null;
  };
  const groupCount = Math.max(position.get("skill") ?? 0, 0);
  return {
    has: (key) => position.has(key),
    flag: (row, key) => at(row, key) === true,
    number,
    text: (row, key) => String(at(row, key) ?? ""),
    sum: (rows, key) => rows.reduce((total, row) => total + (number(row, key) ?? 0), 0),
    groupColumns: table.columns.slice(0, groupCount),
    group: (row) => row.slice(0, groupCount).map((value) => String(value ?? "")),
  };
}

/** Rows that add up the skills of an area, counted in child-skills. */
export const ALL_SKILLS = "all";
