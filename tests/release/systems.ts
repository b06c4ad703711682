import fc from "fast-check";
import type { CountSystem } from "../../src/release/system";

/** Counts that no outsider may prove: 1 to `minimum` - 1. */
export function small(minimum: number) {
  return { low: 1, high: minimum - 1 };
}

export function gridOf(
  rows: fc.Arbitrary<number>,
  columns: fc.Arbitrary<number>,
  top: number,
): fc.Arbitrary<number[][]> {
  return fc.tuple(rows, columns).chain(([r, c]) =>
    fc.array(fc.array(fc.integer({ min: 0, max: top }), { minLength: c, maxLength: c }), {
      minLength: r,
      maxLength: r,
    }),
  );
}

/** Every table of whole numbers that agrees with what is shown, found by trying: the plainest second method there is. */
export function allTables(system: CountSystem, hidden: Uint8Array, top: number): number[][] {
  const found: number[][] = [];
  const counts = system.cells.map(({ count }, cell) => (hidden[cell] ? NaN : (count as number)));
  const open = [...counts.keys()].filter((cell) => Number.isNaN(counts[cell]));
  const closedBy = system.equations.map(({ terms }) => Math.max(-1, ...terms.map(({ cell }) => open.indexOf(cell))));
  const adds = (index: number) => {
    const { terms, equals } = system.equations[index]!;
    return terms.reduce((sum, { cell, coefficient }) => sum + coefficient * (counts[cell] as number), 0) === equals;
  };
  const fill = (at: number): void => {
    if (at === open.length) return void found.push([...counts]);
    for (let value = 0; value <= top; value += 1) {
      counts[open[at] as number] = value;
      if (system.equations.every((_, index) => closedBy[index] !== at || adds(index))) fill(at + 1);
    }
    counts[open[at] as number] = NaN;
  };
  fill(0);
  return found;
}
