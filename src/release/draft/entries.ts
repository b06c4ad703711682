import type { TableColumn, TableValue } from "../../tables/table";
import type { DraftEntry } from "../release-table";
import type { SystemBuilder } from "./builder";

/** What each column of a row is: a count by its cell, a figure by the cells that it gives away, or else a label. */
export interface RowCells {
  readonly counts: Readonly<Record<string, number>>;
  readonly figures: Readonly<Record<string, readonly number[]>>;
}

/** Figures that are the first count they need over the second, times this. */
const SHARES: Readonly<Record<string, 1 | 100>> = { shareMet: 1, share: 1, lowest: 1, coverage: 1, percent: 100 };

/**
 * One row of a table, column by column.
 *
 * @throws {RangeError} where a count of the table is not the count of its cell: one of the two was counted wrongly
 */
export function draftRow(
  builder: SystemBuilder,
  columns: readonly TableColumn[],
  values: readonly TableValue[],
  { counts, figures }: RowCells,
): DraftEntry[] {
  return columns.map(({ key }, at): DraftEntry => {
    const value = values[at] ?? null;
    const cell = Object.hasOwn(counts, key) ? counts[key] : undefined;
    if (cell === undefined) {
      const needs = Object.hasOwn(figures, key) ? figures[key] : undefined;
      const share = SHARES[key];
      return needs ? { kind: "figure", value, needs, ...(share ? { share } : {}) } : { kind: "label", value };
    }
    if (builder.at(cell).count !== value)
      throw new RangeError(`Counted twice, differently: ${builder.at(cell).place}.`);
    return { kind: "count", cell };
  });
}
