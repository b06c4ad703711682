import type { ReleasableId, TableColumn, TableValue } from "../tables/table";

/** A table on its way out: every count is a cell of the system, every other figure names the counts it gives away. */
export interface DraftTable {
  readonly id: ReleasableId;
  readonly title: string;
  readonly population: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly DraftEntry[])[];
  readonly notes: readonly string[];
}

export type DraftEntry =
  | { readonly kind: "label"; readonly value: TableValue }
  /** `cell`: index into the cells of the system. */
  | { readonly kind: "count"; readonly cell: number }
  /**
   * A percent, limit, rate or ratio: shown only where every count that it gives back is shown, or may be. With `share` it
   * is the first count it needs over the second, times this, and can be worked out again from rounded counts.
   */
  | {
      readonly kind: "figure";
      readonly value: TableValue;
      readonly needs: readonly number[];
      readonly share?: 1 | 100;
    };

/** The one symbol for all that is hidden, whatever the reason. */
export const HIDDEN = "*";

/** A count known to lie between two whole numbers, both included. */
export interface CountRange {
  readonly from: number;
  readonly to: number;
}

/** As it leaves: values only. */
export interface ReleasedTable {
  readonly id: ReleasableId;
  readonly title: string;
  readonly population: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly ReleasedValue[])[];
  readonly notes: readonly string[];
}

export type ReleasedValue = TableValue | typeof HIDDEN | CountRange;
