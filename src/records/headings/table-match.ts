import { type HeaderCell, type HeadingDecisions, type HeadingMatch, matchHeadings } from "./headings";
import { TABLES } from "../tables";
import type { TableName, TableSpec } from "../tables/spec";
import { headingKey } from "../cells/words";

export type DecidedHeadings = ReadonlyMap<TableName, HeadingDecisions>;

/** The table whose headings these are: all that it needs are there. The one that needs most wins. */
export function bestSpec(
  cells: readonly HeaderCell[],
  decided: DecidedHeadings,
): { spec: TableSpec; match: HeadingMatch } | null {
  const fits = TABLES.map((spec) => ({ spec, match: matchHeadings(spec, cells, decided.get(spec.name)) }))
    .filter(({ spec, match }) => match.missing.length === 0 && !hasForbidden(spec, cells))
    .sort((a, b) => needs(b.spec) - needs(a.spec) || b.match.columns.size - a.match.columns.size);
  return fits[0] ?? null;
}

/** The table that carries this name, as Excel tables and sheets are named. */
export function specNamed(name: string): TableSpec | null {
  const key = headingKey(name)
    .replace(/^(tbl|table)(?=.)/, "")
    .replace(/\d+$/, "");
  return TABLES.find((spec) => [spec.name, ...spec.synonyms].some((each) => headingKey(each) === key)) ?? null;
}

function hasForbidden(spec: TableSpec, cells: readonly HeaderCell[]): boolean {
  const forbidden = (spec.without ?? []).map(headingKey);
  return cells.some((cell) => cell.keys.some((key) => forbidden.includes(key)));
}

function needs(spec: TableSpec): number {
  return spec.columns.filter((column) => column.required).length;
}
