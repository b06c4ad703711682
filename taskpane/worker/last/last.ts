import type { RecordsFound } from "../records/found";
import type { ChartPreview } from "../report/made";

/** What a file of last quarter is, and the day of its figures, ISO text, where it says it. */
export interface LastRead {
  readonly kind: "workbook" | "report" | "report workbook";
  readonly asOf: string | null;
}

/** Why the headline figures are not what they were. */
export interface Compared {
  readonly days: { readonly earlier: string; readonly later: string };
  /** Only the counts of an earlier report were at hand. */
  readonly isFromReport: boolean;
  /** The children, skill checks up to date, those met; then those met in each area. */
  readonly bridges: readonly { readonly sentence: string; readonly chart: ChartPreview }[];
  readonly fileName: string;
  /** The later day, in words. */
  readonly label: string;
}

export interface ComparedAnswer {
  readonly found: RecordsFound;
  /** Null where the records cannot be used; `found.failure` says why. */
  readonly compared: Compared | null;
  /** Rows that the last report had and the workbook has not. */
  readonly lost: readonly string[];
}

export interface MadeAgain {
  readonly isSame: boolean;
  /** What differs, the reasons first; empty where nothing does. */
  readonly lines: readonly string[];
}
