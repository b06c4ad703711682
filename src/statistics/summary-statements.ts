/** Children in the progress categories a to e. */
export type CategoryCounts = readonly [a: number, b: number, c: number, d: number, e: number];

export interface SummaryStatement {
  readonly statement: 1 | 2;
  readonly count: number;
  readonly of: number;
  /** 0 to 100; null where there is nobody to count. */
  readonly percent: number | null;
}

/**
 * The two summary statements of the federal Part C child-outcome indicator. 1: of those who entered below the level of their
 * peers, (c + d) / (a + b + c + d) grew faster. 2: (d + e) / (a + b + c + d + e) left at the level of their peers.
 *
 * Source: Office of Special Education Programs, Part C Indicator 3.
 *
 * @throws {RangeError} when a count is not a whole number of at least 0
 */
export function summaryStatements(counts: CategoryCounts): readonly [SummaryStatement, SummaryStatement] {
  if (!counts.every((count) => Number.isInteger(count) && count >= 0)) {
    throw new RangeError("summaryStatements: counts are whole and not negative");
  }
  const [a, b, c, d, e] = counts;
  return [statement(1, c + d, a + b + c + d), statement(2, d + e, a + b + c + d + e)];
}

function statement(number: 1 | 2, count: number, of: number): SummaryStatement {
  return { statement: number, count, of, percent: of === 0 ? null : (100 * count) / of };
}
