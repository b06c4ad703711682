import type { Table } from "../../../tables/table";
import { type Row, readTable, type TableReader } from "../read-table";
import { percentOf, plural } from "../../../words/numbers";

export const CATEGORIES = ["a", "b", "aOrB", "c", "d", "e"] as const;

export function ratingsSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const rows = (statement: number) => table.rows.filter((row) => read.number(row, "statement") === statement);
  const counted = rows(2).filter((row) => (read.number(row, "of") ?? 0) > 0);
  if (counted.length === 0) return ["No child who left after six months of service or more has both ratings"];
  return [
    `Of children who entered below the level of their peers, these grew faster by exit: ${statementOf(read, rows(1))}`,
    `Left at the level of their peers: ${statementOf(read, rows(2))}.`,
    `${coverage(read, rows(2))} A few children move these percents a great deal.`,
  ];
}

function statementOf(read: TableReader, rows: readonly Row[]): string {
  return rows
    .map((row) => {
      const of = read.number(row, "of") ?? 0;
      const said = of === 0 ? "nobody to count" : percentOf(read.number(row, "count") ?? 0, of);
      return `${read.text(row, "outcome")} ${said}`;
    })
    .join("; ");
}

function coverage(read: TableReader, rows: readonly Row[]): string {
  const said = rows.map((row) => {
    const { rated, left } = ratedOf(read, row);
    return `${read.text(row, "outcome")} ${left === null ? "nobody" : percentOf(rated, left)}`;
  });
  return `Rated, of those who left after six months of service or more: ${said.join("; ")}.`;
}

/** How many were rated, and of how many who left: null where nobody is rated, since the share alone is kept. */
export function ratedOf(read: TableReader, row: Row): { readonly rated: number; readonly left: number | null } {
  const rated = CATEGORIES.reduce((sum, key) => sum + (read.number(row, key) ?? 0), 0);
  const share = read.number(row, "coverage") ?? 0;
  return { rated, left: share === 0 ? null : Math.round(rated / share) };
}

/** `17 children`. */
export function ratedInWords(read: TableReader, row: Row): string {
  return plural(ratedOf(read, row).rated, "child", "children");
}
