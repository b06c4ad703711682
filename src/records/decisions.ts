/**
 * A repair decision: what a person settled about the records, kept apart from the data, revocable, and carried to the
 * next quarter.
 */
export type Decision =
  /** Two ids are one child: rows under `alias` count as rows of `child`. */
  | { readonly kind: "same-child"; readonly child: string; readonly alias: string; readonly revoked?: boolean }
  /** A skill written another way: `alias` is read as `skill`. */
  | { readonly kind: "skill-alias"; readonly skill: string; readonly alias: string; readonly revoked?: boolean }
  /** How the text dates of a column are to be read. */
  | {
      readonly kind: "date-order";
      readonly table: string;
      readonly column: string;
      readonly order: "day first" | "month first" | "year first";
      readonly revoked?: boolean;
    }
  /** What a heading of the workbook stands for. */
  | {
      readonly kind: "heading";
      readonly table: string;
      readonly heading: string;
      readonly means: string;
      readonly revoked?: boolean;
    };

export interface Decisions {
  readonly decisions: readonly Decision[];
}
