/** Solves a small square system by elimination with the largest pivot first. */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  const pivots = eliminate(rows, right.length, 0);
  const solution = right.map(() => 0);
  pivots.forEach((column, i) => (solution[column] = rows[i]?.[right.length] ?? 0));
  return solution;
}

/** True where no column is a combination of the others. */
export function isIndependent(matrix: readonly (readonly number[])[]): boolean {
  const columns = matrix[0]?.length ?? 0;
  return (
    eliminate(
      matrix.map((row) => [...row]),
      columns,
      1e-9,
    ).length === columns
  );
}

/** Brings the rows to reduced form in place; gives the pivot column of each row that has one. */
function eliminate(rows: number[][], columns: number, smallest: number): number[] {
  const pivots: number[] = [];
  for (let column = 0; column < columns && pivots.length < rows.length; column += 1) {
    const top = pivots.length;
    let best = top;
    for (let i = top; i < rows.length; i += 1) {
      if (Math.abs(rows[i]?.[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0)) best = i;
    }
    const pivotRow = rows[best] ?? [];
    const pivot = pivotRow[column] ?? 0;
    if (Math.abs(pivot) <= smallest) continue;
    rows[best] = rows[top] ?? [];
    rows[top] = pivotRow.map((each) => each / pivot);
    rows.forEach((row, i) => {
      const factor = row[column] ?? 0;
      if (i !== top && factor !== 0) rows[i] = row.map((each, k) => each - factor * (rows[top]?.[k] ?? 0));
    });
    pivots.push(column);
  }
  return pivots;
}
