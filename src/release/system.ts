/**
 * One system of whole numbers for everything that a release shows or lets work out.
 *
 * Unknowns are counts; what ties them together are equations with whole coefficients: a total and its parts, a share
 * and the count it gives back, a figure of an earlier release. Everything else about a release (protecting, attacking,
 * the ledger) reads this one system, so that nothing can be left out of one and not of another (METHOD.md, section 7).
 */
export interface CountSystem {
  readonly cells: readonly Cell[];
  readonly equations: readonly Equation[];
}

export interface Cell {
  /** What the count is of, the same in every release: table, period, group, row and column. Unique in a system. */
  readonly key: string;
  /** Where it stands, in words for a person; never a count, never a child. */
  readonly place: string;
  /** The true count; null where an earlier release hid it, and nobody here knows it. */
  readonly count: number | null;
  /**
   * - `table`: a cell of the release, shown unless it is hidden
   * - `never`: not printed, but it could be worked out (the remainder of a share, a total nobody asked for)
   * - `out`: printed by an earlier release, and known to everybody
   */
  readonly showing: "table" | "never" | "out";
  /** Counts that no outsider may prove it to lie among; null: nothing to protect. */
  readonly secret: Span | null;
  /** What hiding it takes from the reader, above 0. */
  readonly loss: number;
  /** Known without being shown: tables have no row that holds nobody, so that a row says 1 or more. Left out: 0. */
  readonly atLeast?: number;
}

/** Counts and equations that cannot all be true: wrong totals, or records that changed since an earlier release. */
export class Contradiction extends RangeError {}

/** The solver gave no answer: nothing is known of the counts, and nothing may leave. */
export class NoAnswer extends Error {}

/** Whole numbers, both ends included. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** The sum of coefficient times count over `terms` is `equals`. */
export interface Equation {
  readonly terms: readonly Term[];
  readonly equals: number;
}

export interface Term {
  /** Index into `cells`. */
  readonly cell: number;
  readonly coefficient: number;
}

/**
 * The counts that must not be proved of a cell: 1 to `minimum` - 1 contributors, children of one family being one.
 *
 * A cell of 12 children from 10 families is small, and stays so for an outsider who knows how many are siblings; so
 * its span ends that much higher.
 */
export function smallSpan(count: number, contributors: number, minimum: number): Span | null {
  if (contributors < 1 || contributors >= minimum) return null;
  return { low: 1, high: minimum - 1 + (count - contributors) };
}

/** True where the cell's own count lies among those that must not be proved, or may do so as far as anybody here knows. */
export function isSecret({ count, secret }: Cell): boolean {
  return secret !== null && (count === null || (count >= secret.low && count <= secret.high));
}
