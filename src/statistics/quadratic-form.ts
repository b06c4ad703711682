/** The value of u' V⁻ u, and how many independent directions V has. */
export interface QuadraticForm {
  readonly value: number;
  readonly rank: number;
}

/** A pivot this much smaller than the largest diagonal counts as none. */
const NO_PIVOT = 1e-10;

/**
 * u' V⁻ u for a covariance matrix V that may be singular, by Cholesky's method with the largest pivot first; directions
 * without variance are left out. Source: Golub & Van Loan (2013), Matrix Computations, 4th ed., section 4.2.7.
 */
export function quadraticForm(vector: readonly number[], covariance: readonly (readonly number[])[]): QuadraticForm {
  const left = covariance.map((row) => [...row]);
  const rest = [...vector];
  const open = new Set(vector.keys());
  const least = NO_PIVOT * Math.max(0, ...left.map((row, index) => row[index]!));
  let value = 0;
  let rank = 0;
  for (;;) {
    const pivot = largestPivot(left, open);
    if (pivot < 0 || left[pivot]![pivot]! <= least) return { value, rank };
    const variance = left[pivot]![pivot]!;
    value += rest[pivot]! ** 2 / variance;
    rank += 1;
    open.delete(pivot);
    for (const row of open) {
      const factor = left[row]![pivot]! / variance;
      rest[row]! -= factor * rest[pivot]!;
      for (const column of open) left[row]![column]! -= factor * left[pivot]![column]!;
    }
  }
}

function largestPivot(matrix: readonly (readonly number[])[], open: ReadonlySet<number>): number {
  let best = -1;
  for (const index of open) if (best < 0 || matrix[index]![index]! > matrix[best]![best]!) best = index;
  return best;
}
