import type { CountSystem, Equation } from "../system";
import type { Combined } from "./combined";

/**
 * The system of the present release with as much of the earlier ones as hangs together with it through counts that an
 * outsider does not know. The rest is as safe as it was.
 */
export function reachable({ cells, equations, ownCells, ownEquations }: Reached): CountSystem {
  const usedBy = cells.map((): number[] => []);
  equations.forEach(({ terms }, index) => {
    if (index >= ownEquations) terms.forEach(({ cell }) => usedBy[cell]!.push(index));
  });
  const kept = new Set<number>();
  const seen = new Set([...cells.keys()].filter((cell) => cell < ownCells && cells[cell]?.showing !== "out"));
  for (const cell of seen) {
    for (const index of usedBy[cell] ?? []) {
      if (kept.has(index)) continue;
      kept.add(index);
      equations[index]!.terms.forEach((term) => {
        if (cells[term.cell]?.showing !== "out") seen.add(term.cell);
      });
    }
  }
  return only(cells, ownCells, [
    ...equations.slice(0, ownEquations),
    ...equations.filter((_, index) => kept.has(index)),
  ]);
}

export type Reached = CountSystem & Pick<Combined, "ownCells" | "ownEquations">;

/** Own cells keep their places, so that drafts still point at them. */
function only(cells: CountSystem["cells"], ownCells: number, equations: readonly Equation[]): CountSystem {
  const added = new Set(
    equations.flatMap(({ terms }) => terms.map(({ cell }) => cell)).filter((cell) => cell >= ownCells),
  );
  const order = [...added].sort((a, b) => a - b);
  const placeOf = new Map(order.map((cell, at) => [cell, ownCells + at]));
  return {
    cells: [...cells.slice(0, ownCells), ...order.map((cell) => cells[cell]!)],
    equations: equations.map(({ terms, equals }) => ({
      terms: terms.map(({ cell, coefficient }) => ({ cell: placeOf.get(cell) ?? cell, coefficient })),
      equals,
    })),
  };
}
