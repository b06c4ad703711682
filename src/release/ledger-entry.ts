import type { Equation } from "./system";

/** What one release showed and lets work out: structure and shown values, never a hidden one. */
export interface LedgerEntryBody {
  /** ISO dates. */
  readonly asOf: string;
  readonly from: string;
  /** Table ids. */
  readonly tables: readonly string[];
  readonly rule: {
    readonly minimumCell: number;
    readonly method: "hide" | "round" | "ranges";
    readonly base: number | null;
  };
  /** Canonical text of the settings that say what a figure counts. */
  readonly definition: string;
  readonly cells: readonly LedgerCell[];
  /** Terms index `cells`. */
  readonly equations: readonly Equation[];
}

export interface LedgerCell {
  readonly key: string;
  readonly place: string;
  /** The count that was shown; null where it was hidden, or never printed. */
  readonly shown: number | null;
  /** Known without being shown, because a row was there; left out: 0. */
  readonly atLeast?: number;
}
