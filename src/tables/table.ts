/** A table of results: typed columns with units, rows of plain values. Not estimable is null. */
export interface Table {
  /** `met-by-band` and its kind. */
  readonly id: string;
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
