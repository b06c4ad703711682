/** Children in the progress categories a to e; `aOrB` are those of whom it is not known whether they gained any skill. */
export interface CategoryCounts {
  readonly a: number;
  readonly b: number;
  readonly aOrB: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
}

export interface SummaryStatement {
  readonly statement: 1 | 2;
  readonly count: number;
  readonly of: number;
  /** 0 to 100; null where there is nobody to count. */
  readonly percent: number | null;
}

/**
 * The two summary statements of the federal Part C child-outcome indicator. 1: of those who entered below the level of their
 * peers, (c + d) / (a + b + c + d) grew faster. 2: (d + e) / (a + b + c + d + e) left at the level of their peers. Whoever is
 * a or b is in both denominators either way.
 *
 * Source: Office of Special Education Programs, Part C Indicator 3.
 *
 * @throws {RangeError} when a count is not a whole number of at least 0
 */
export function summaryStatements(counts: CategoryCounts): readonly [SummaryStatement, SummaryStatement] {
  const { a, b, aOrB, c, d, e } = counts;
  if (![a, b, aOrB, c, d, e].every((count) => Number.isInteger(count) && count >= 0)) {
    throw new RangeError("summaryStatements: counts are whole and not negative");
  }
  const below = a + b + aOrB;
  return [statement(1, c + d, below + c + d), statement(2, d + e, below + c + d + e)];
}

function statement(number: 1 | 2, count: number, of: number): SummaryStatement {
  return { statement: number, count, of, percent: of === 0 ? null : (100 * count) / of };
}
