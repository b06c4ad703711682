/**
 * The plain way of hiding by hand: in every row and every column with one hidden cell, hide the smallest other one that is
 * not 0, until none has one hidden cell (common practice, no source). Null where a row or column has no other cell.
 */
export function naivePattern(
  counts: readonly (readonly number[])[],
  minimum: number,
): [row: number, column: number][] | null {
  const hidden = counts.map((row) => row.map((count) => count >= 1 && count < minimum));
  const added: [number, number][] = [];
  const lines = [
    ...counts.map((row, r) => row.map((_, c) => [r, c] as [number, number])),
    ...counts[0]!.map((_, c) => counts.map((__, r) => [r, c] as [number, number])),
  ];
  for (let line = one(lines, hidden); line !== undefined; line = one(lines, hidden)) {
    const others = line.filter(([r, c]) => !hidden[r]![c] && counts[r]![c]! > 0);
    if (others.length === 0) return null;
    const [r, c] = others.reduce((least, each) =>
      counts[each[0]]![each[1]]! < counts[least[0]]![least[1]]! ? each : least,
    );
    hidden[r]![c] = true;
    added.push([r, c]);
  }
  return added;
}

function one(lines: readonly (readonly [number, number][])[], hidden: readonly (readonly boolean[])[]) {
  return lines.find((line) => line.filter(([r, c]) => hidden[r]![c]).length === 1);
}
