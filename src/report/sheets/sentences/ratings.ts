import type { Table } from "../../../tables/table";
import { plural, shareOf } from "../../../words/numbers";
import { OUTCOME_PARTS, ratingsFinding } from "../../answer/outcome-levels";
import { type Row, readTable, type TableReader } from "../read-table";

export function ratingsSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const { headline, below, picture } = ratingsFinding(table);
  if (!picture) return below.map((line) => line.replace(/\.$/, ""));
  const second = table.rows.filter((row) => read.number(row, "statement") === 2);
  return [headline.replace(/\.$/, ""), ...below.filter((line) => line !== ""), coverage(read, second)];
}

function coverage(read: TableReader, rows: readonly Row[]): string {
  const said = rows.map((row) => {
    const { rated, left } = ratedOf(read, row);
    return `${read.text(row, "outcome")} ${left === null ? "nobody" : shareOf(rated, left)}`;
  });
  return `Rated, of the children who left after six months of service or more: ${said.join("; ")}.`;
}

/** How many were rated, and of how many who left: null where nobody is rated, since the share alone is kept. */
export function ratedOf(read: TableReader, row: Row): { readonly rated: number; readonly left: number | null } {
  const keys = OUTCOME_PARTS.map(({ key }) => key).filter((key) => read.has(key));
  const rated = keys.reduce((sum, key) => sum + (read.number(row, key) ?? 0), 0);
  const share = read.number(row, "coverage") ?? 0;
  return { rated, left: share === 0 ? null : Math.round(rated / share) };
}

/** `17 children`. */
export function ratedInWords(read: TableReader, row: Row): string {
  return plural(ratedOf(read, row).rated, "child", "children");
}
