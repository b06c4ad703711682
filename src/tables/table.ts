/** The tables that may leave the program. */
export type ReleasableId =
  | "met-by-band"
  | "met-by-band-left"
  | "reached-by-age"
  | "age-when-met"
  | "referrals"
  | "referral-steps"
  | "ratings"
  | "trend";

/** The tables whose rows are single children: made only when asked for by name, never released. */
export type InternalId = "skill-status" | "caseload" | "recheck-plan" | "what-changed-children";

/** Every table there is. What is known of each is declared in catalogue.ts. */
export type TableId =
  ReleasableId | InternalId | "expected-by-now" | "since-enrollment" | "referral-scan" | "agreement" | "what-changed";

/** A table of results: typed columns with units, rows of plain values. Not estimable is null. */
export interface Table<Id extends TableId = TableId> {
  readonly id: Id;
  /** What the table holds, for a reader who was not there. */
  readonly title: string;
  /** Who is counted. */
  readonly population: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly TableValue[])[];
  /** Definitions, cautions and what is missing, as sentences. */
  readonly notes: readonly string[];
  /** True where rows stand for single children: never in a report unless asked for by name, never released. */
  readonly internal?: boolean;
}

export interface TableColumn {
  readonly key: string;
  readonly label: string;
  readonly unit: TableUnit;
}

export type TableUnit =
  | "text"
  | "children"
  | "child-skills"
  | "count"
  | "share"
  | "months"
  | "weeks"
  | "days"
  | "date"
  | "percent"
  | "number"
  | "months (mean length)"
  | "pairs"
  | "child-months"
  | "per 100 child-months";

export type TableValue = string | number | boolean | null;
