import type { Cell, Equation } from "../system";

/**
 * Works counts out that follow from others, one equation at a time.
 *
 * @returns false where they contradict one another: a count below 0, or an equation that does not hold
 */
export function fillCounts(cells: Cell[], equations: readonly Equation[]): boolean {
  const usedBy = new Map<number, Equation[]>();
  for (const equation of equations) {
    for (const { cell } of equation.terms) {
      if (cells[cell]!.count !== null) continue;
      const users = usedBy.get(cell) ?? [];
      users.push(equation);
      usedBy.set(cell, users);
    }
  }
  const queue = [...equations];
  for (let equation = queue.pop(); equation !== undefined; equation = queue.pop()) {
    const open = equation.terms.filter(({ cell }) => cells[cell]!.count === null);
    if (open.length > 1) continue;
    const left = equation.terms.reduce(
      (rest, { cell, coefficient }) => rest - coefficient * (cells[cell]!.count ?? 0),
      equation.equals,
    );
    const [only] = open;
    if (only === undefined) {
      if (left !== 0) return false;
      continue;
    }
    // Adding 0 makes a plain zero of a negative one.
    const count = left / only.coefficient + 0;
    if (!Number.isSafeInteger(count) || count < 0) return false;
    cells[only.cell] = { ...cells[only.cell]!, count };
    queue.push(...(usedBy.get(only.cell) ?? []));
  }
  return true;
}
