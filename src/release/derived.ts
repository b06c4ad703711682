import type { Knowledge } from "./knowledge";
import type { CountSystem } from "./system";

/** What an outsider knows after taking every equation with one unknown: figures that give such a count back tell nothing new. */
export function derived(system: CountSystem, knowledge: Knowledge): Knowledge {
  const lower = knowledge.lower.slice();
  const upper = knowledge.upper.slice();
  const uses = equationsOfCell(system);
  const queue = system.equations.map((_, index) => index);
  for (let index = queue.pop(); index !== undefined; index = queue.pop()) {
    const { terms, equals } = system.equations[index]!;
    const [only, ...others] = terms.filter(({ cell }) => lower[cell] !== upper[cell]);
    if (only === undefined || others.length > 0) continue;
    const rest = terms.reduce(
      (sum, { cell, coefficient }) => (cell === only.cell ? sum : sum + coefficient * lower[cell]!),
      0,
    );
    lower[only.cell] = upper[only.cell] = (equals - rest) / only.coefficient;
    queue.push(...(uses[only.cell] as number[]));
  }
  return { lower, upper };
}

function equationsOfCell({ cells, equations }: CountSystem): number[][] {
  const uses: number[][] = cells.map(() => []);
  equations.forEach(({ terms }, index) => terms.forEach(({ cell }) => (uses[cell] as number[]).push(index)));
  return uses;
}
