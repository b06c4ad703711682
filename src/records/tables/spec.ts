export const TABLE_NAMES = ["Children", "Observations", "Skills", "Referrals", "Signs", "Ratings"] as const;
export type TableName = (typeof TABLE_NAMES)[number];

export type ColumnKind = "id" | "text" | "date" | "number" | "word" | "gestation" | "weeks";

/** One column of a table: what its heading may be called, and how its cells are read. */
export interface ColumnSpec {
  readonly key: string;
  readonly heading: string;
  /** Other headings that are taken for this one. */
  readonly synonyms: readonly string[];
  readonly kind: ColumnKind;
  /** The table is not read without this heading. */
  readonly required?: true;
  /** The rule of a blank cell, where the row needs a value. */
  readonly blank?: string;
  /** A cell that cannot be read leaves the row out; otherwise it is treated as blank, with a warning. */
  readonly strict?: true;
  /** Each word as it is kept, with the ways in which it may be written. */
  readonly words?: Readonly<Record<string, readonly string[]>>;
  /** The rule of a word that is not in `words`. */
  readonly unknownWord?: string;
  /** The form of a cell, for findings. */
  readonly form?: string;
}

export interface TableSpec {
  readonly name: TableName;
  readonly synonyms: readonly string[];
  /** Headings that such a table never has. */
  readonly without?: readonly string[];
  readonly columns: readonly ColumnSpec[];
}

export const CHILD: ColumnSpec = {
  key: "child",
  heading: "Child",
  synonyms: ["Child id", "Child code", "Child number", "Child no", "Niño", "Niña", "Código del niño"],
  kind: "id",
  required: true,
  strict: true,
  blank: "child-blank",
};

export const YES_NO = { yes: ["y", "true", "1", "sí"], no: ["n", "false"] } as const;
