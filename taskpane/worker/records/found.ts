import type { Severity } from "../../../src/records/findings/finding";
import type { Understanding } from "../../../src/records/understanding/understanding";
import type { TableUse } from "../../../src/records/records";
import type { ReleasableId, TableId } from "../../../src/tables/table";

/** What was read of the records, in pieces small enough to cross to the pane at once. */
export interface RecordsFound {
  /** Why nothing can be computed from the records; null where it can. */
  readonly failure: string | null;
  readonly understanding: Understanding;
  readonly tables: readonly TableFound[];
  readonly groups: readonly FindingGroup[];
  readonly counts: Readonly<Record<Severity, number>>;
  /** Columns of Children that can group a table, with how many different values each has. */
  readonly groupColumns: readonly { readonly heading: string; readonly values: number }[];
  /** Codes of the therapists, "" where some row has none; null where there is no such column. */
  readonly therapists: readonly string[] | null;
  readonly skills: readonly { readonly id: string; readonly label: string }[];
  /** The day of the last look, ISO text; null where there is none. */
  readonly lastLook: string | null;
  /** The last day of the quarter of `lastLook`. */
  readonly quarterEnd: string | null;
}

/** One table of the workbook, and what each of its headings stands for. */
export interface TableFound extends TableUse {
  readonly columns: readonly MappedColumn[];
  /** Headings that the table has no column for. */
  readonly further: readonly string[];
  /** A row a child and a column a skill. */
  readonly wide: boolean;
}

export interface MappedColumn {
  /** The column as this program knows it. */
  readonly means: string;
  readonly required: boolean;
  /** The heading as it stands in the workbook, and its cell; null where the column is not there. */
  readonly heading: string | null;
  readonly cell: string | null;
}

/** Findings of one rule in one table. */
export interface FindingGroup {
  readonly rule: string;
  readonly severity: Severity;
  readonly table: string;
  readonly explanation: string;
  readonly count: number;
  readonly expected: string;
  readonly advice: string;
  /** The first cells; the rest is asked for as it is looked at. */
  readonly cells: readonly FoundCell[];
  readonly repair: Repair | null;
}

export interface FoundCell {
  readonly sheet: string;
  readonly cell: string;
  /** What to do, where it is not the group's own. */
  readonly advice: string | null;
}

/** What a decision could settle, with what the workbook says about it. */
export type Repair =
  | { readonly kind: "skill-alias" | "same-child"; readonly writings: readonly Writing[] }
  | { readonly kind: "date-order"; readonly table: string; readonly columns: readonly string[] }
  | {
      readonly kind: "heading";
      readonly table: string;
      readonly headings: readonly string[];
      readonly means: readonly string[];
    };

/** A text that stands in the workbook, and in how many cells. */
export interface Writing {
  readonly text: string;
  readonly cells: number;
}

/** A table that can be asked for. */
export type TableChoice = TableOffered &
  ({ readonly id: ReleasableId; readonly releasable: true } | { readonly id: TableId; readonly releasable: false });

interface TableOffered {
  readonly name: string;
  /** The question that it answers, in one line. */
  readonly about: string;
  readonly internal: boolean;
}
