import type { ColumnSpec, TableSpec } from "../tables/spec";
import { headingKey } from "../cells/words";

/** One heading as it stands: its texts in order of preference (of two rows, both together come first). */
export interface HeaderCell {
  readonly row: number;
  readonly column: number;
  /** As it is shown, for a column under its own heading. */
  readonly text: string;
  readonly keys: readonly string[];
}

export interface HeadingMatch {
  readonly columns: ReadonlyMap<string, number>;
  /** Cells that claim a column that another claims with equal right. */
  readonly twice: readonly HeaderCell[];
  readonly unmatched: readonly HeaderCell[];
  readonly missing: readonly ColumnSpec[];
}

/** Heading decisions of one table: the key of a heading, and the key of the column it stands for. */
export type HeadingDecisions = ReadonlyMap<string, string>;

const NO_MATCH = Number.MAX_SAFE_INTEGER;
const SYNONYM_RANK = 100;

/** Rows of headings seen so far on a sheet: one that says only what another above it says, column by column, begins no table. */
export class HeadingsSeen {
  private readonly rows: ReadonlyMap<number, string>[] = [];

  /** Whether these headings were said before; they are remembered if not. */
  again(cells: readonly HeaderCell[]): boolean {
    const own = cells.map(({ column, text }) => [column, headingKey(text)] as const);
    if (this.rows.some((row) => own.every(([column, key]) => row.get(column) === key))) return true;
    this.rows.push(new Map(own));
    return false;
  }
}

/** Gives each column of a table its heading: a decision beats the column's own name, and that beats a synonym. */
export function matchHeadings(
  spec: TableSpec,
  cells: readonly HeaderCell[],
  decided: HeadingDecisions = new Map(),
): HeadingMatch {
  const columns = new Map<string, number>();
  const twice: HeaderCell[] = [];
  const matched = new Set<HeaderCell>();
  for (const column of spec.columns) {
    const best = bestCells(column, cells, decided);
    best.forEach((cell) => matched.add(cell));
    if (best.length === 1) columns.set(column.key, (best[0] as HeaderCell).column);
    else twice.push(...best);
  }
  const missing = spec.columns.filter((column) => column.required && !columns.has(column.key));
  return { columns, twice, unmatched: cells.filter((cell) => !matched.has(cell)), missing };
}

/** Every heading key under which a column may stand. */
export function headingKeys(column: ColumnSpec): string[] {
  return [column.heading, ...column.synonyms].map(headingKey);
}

/** The column of a table that a heading decision means, by name or synonym; null where there is none. */
export function columnMeant(spec: TableSpec, means: string): ColumnSpec | null {
  const key = headingKey(means);
  return spec.columns.find((column) => headingKeys(column).includes(key)) ?? null;
}

function bestCells(column: ColumnSpec, cells: readonly HeaderCell[], decided: HeadingDecisions): HeaderCell[] {
  const names = headingKeys(column);
  const ranks = cells.map((cell) => rank(column, names, cell, decided));
  const best = Math.min(...ranks, NO_MATCH);
  return best === NO_MATCH ? [] : cells.filter((_, i) => ranks[i] === best);
}

function rank(column: ColumnSpec, names: readonly string[], cell: HeaderCell, decided: HeadingDecisions): number {
  let best = NO_MATCH;
  cell.keys.forEach((key, preference) => {
    const means = decided.get(key);
    if (means !== undefined) best = means === column.key ? Math.min(best, preference - SYNONYM_RANK) : best;
    else if (key === names[0]) best = Math.min(best, preference);
    else if (names.includes(key)) best = Math.min(best, SYNONYM_RANK + preference);
  });
  return best;
}
