/** Solves a small regular square system by elimination, with the largest pivot first. */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  right.forEach((_, column) => {
    let best = column;
    rows.forEach((row, i) => {
      if (i > column && Math.abs(row[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0)) best = i;
    });
    const pivotRow = rows[best] ?? [];
    const pivot = pivotRow[column] ?? 0;
    if (pivot === 0) throw new RangeError("solve: the system has no single answer");
    rows[best] = rows[column] ?? [];
    const top = pivotRow.map((each) => each / pivot);
    rows.forEach((row, i) => {
      rows[i] = i === column ? top : row.map((each, k) => each - (row[column] ?? 0) * (top[k] ?? 0));
    });
  });
  return rows.map((row) => row[right.length] ?? 0);
}
