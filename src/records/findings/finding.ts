/** `error`: the row is not used. `warning`: used, a person should look. `note`: information. */
export type Severity = "error" | "warning" | "note";

/**
 * One thing about one cell (or column range) that a person should know.
 * It never carries the text of a cell of Children or Observations: `advice` names the cell and the form expected.
 */
export interface Finding {
  /** A rule id of the fixed list in `rules.ts`. */
  readonly rule: string;
  readonly severity: Severity;
  /** Children, Observations, Skills, Referrals, Signs, Ratings; or "Workbook". */
  readonly table: string;
  /** Where the records come from several files. */
  readonly file?: string;
  readonly sheet: string;
  /** One A1 address without the sheet, or the range of a column (`C2:C73`). */
  readonly cell: string;
  readonly expected: string;
  readonly advice: string;
}
