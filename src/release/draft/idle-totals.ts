import type { Cell, CountSystem, Equation } from "../system";

/**
 * The same cells with fewer equations: those left out only say what a total is that nobody prints, that need not be
 * protected, and that nothing else hangs on. Whatever the other counts are, such a total is their sum, so an outsider
 * learns nothing from it; but it would tie parts together that are solved faster apart.
 */
export function withoutIdleTotals(system: CountSystem): CountSystem {
  const { cells, equations } = system;
  const usedBy = cells.map((): Set<number> => new Set());
  equations.forEach(({ terms }, index) => terms.forEach(({ cell }) => usedBy[cell]!.add(index)));
  const dropped = new Set<number>();
  const queue = [...cells.keys()];
  for (let cell = queue.pop(); cell !== undefined; cell = queue.pop()) {
    const [only] = usedBy[cell]!;
    if (only === undefined || usedBy[cell]!.size > 1 || !mayGo(cells[cell]!) || !isSumOf(cell, equations[only]!))
      continue;
    dropped.add(only);
    for (const term of equations[only]!.terms) {
      usedBy[term.cell]!.delete(only);
      queue.push(term.cell);
    }
  }
  return { cells, equations: equations.filter((_, index) => !dropped.has(index)) };
}

function mayGo({ showing, secret }: Cell): boolean {
  return showing === "never" && secret === null;
}

/** True where the equation says that the cell is the sum of its other terms, each counted in full. */
function isSumOf(cell: number, { terms, equals }: Equation): boolean {
  const own = terms.find((term) => term.cell === cell)?.coefficient ?? 0;
  return equals === 0 && Math.abs(own) === 1 && terms.every((term) => term.cell === cell || term.coefficient * own < 0);
}
