import { type Part, positionsIn } from "./parts";
import type { Knowledge } from "./knowledge";
import type { CountSystem, Span } from "./system";

/** A table of whole numbers that agrees with all that is shown, for the cells of one part; the rest stands as it is. */
export interface Witness {
  readonly cells: readonly number[];
  readonly counts: Float64Array;
}

/** Whole numbers near a solver's answer, where they agree with everything; null where they do not. */
export function wholeWitness(part: Part, knowledge: Knowledge, near: Float64Array): Witness | null {
  const witness = { cells: part.cells, counts: near.map(Math.round) };
  return agrees(part, knowledge, witness) ? witness : null;
}

/** True where every count is whole and within what is known, and every equation adds up: addition alone. */
export function agrees(part: Part, { lower, upper }: Knowledge, witness: Witness): boolean {
  const { cells, counts } = witness;
  const positions = positionsIn(cells === part.cells ? part : witness);
  const isPossible = (cell: number, at: number) =>
    Number.isSafeInteger(counts[at]) && counts[at]! >= lower[cell]! && counts[at]! <= upper[cell]!;
  if (!cells.every(isPossible)) return false;
  return part.equations.every((equation) => {
    const sum = equation.cells.reduce(
      (total, cell, at) => total + equation.coefficients[at]! * (counts[positions.get(cell) ?? -1] ?? NaN),
      0,
    );
    return sum === equation.equals;
  });
}

/** True where a whole table, shown and hidden, agrees with every equation of the system: the check that stands by itself. */
export function addsUp(system: CountSystem, counts: Float64Array): boolean {
  return (
    counts.every((count) => Number.isSafeInteger(count) && count >= 0) &&
    system.equations.every(
      ({ terms, equals }) =>
        terms.reduce((sum, { cell, coefficient }) => sum + coefficient * (counts[cell] as number), 0) === equals,
    )
  );
}

export function isOutside(count: number, { low, high }: Span): boolean {
  return count < low || count > high;
}
