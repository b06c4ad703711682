import type { Solver } from "../linear-model";

/** The cheapest choice of cells that takes at least one of every cover. */
export interface Cheapest {
  readonly cells: readonly number[];
  readonly loss: number;
  /** No choice is cheaper than this. */
  readonly bound: number;
}

/** A limit on the search, the same on every machine; beyond it the best found stands, with the bound beside it. */
const NODES = 5000;

/** @throws {RangeError} when a cover is empty */
export function cheapest(
  covers: readonly (readonly number[])[],
  lossOf: (cell: number) => number,
  solver: Solver,
): Cheapest {
  const cells = [...new Set(covers.flat())].sort((one, other) => one - other);
  if (cells.length === 0) return { cells: [], loss: 0, bound: 0 };
  const columnOf = new Map(cells.map((cell, column) => [cell, column]));
  const { values, bound } = solver(
    {
      sense: "minimise",
      objective: Float64Array.from(cells, lossOf),
      lower: new Float64Array(cells.length),
      upper: new Float64Array(cells.length).fill(1),
      whole: new Uint8Array(cells.length).fill(1),
      rows: covers.map((cover) => ({
        columns: cover.map((cell) => columnOf.get(cell) as number),
        coefficients: cover.map(() => 1),
        lower: 1,
        upper: Infinity,
      })),
    },
    { nodes: NODES },
  );
  const taken = values.length === 0 ? greedy(covers, lossOf) : cells.filter((_, column) => values[column]! > 0.5);
  const loss = taken.reduce((sum, cell) => sum + lossOf(cell), 0);
  return { cells: taken, loss, bound: Math.min(loss, Math.ceil(bound - 1e-6)) };
}

/** At least one of every cover: the cell that serves most covers for its loss, again and again. */
export function greedy(covers: readonly (readonly number[])[], lossOf: (cell: number) => number): number[] {
  const taken: number[] = [];
  for (let left = covers; left.length > 0; left = left.filter((cover) => !cover.includes(taken.at(-1) as number))) {
    const serves = new Map<number, number>();
    left.forEach((cover) => cover.forEach((cell) => serves.set(cell, (serves.get(cell) ?? 0) + 1)));
    const worth = (cell: number) => (serves.get(cell) as number) / lossOf(cell);
    taken.push([...serves.keys()].reduce((best, cell) => (worth(cell) > worth(best) ? cell : best)));
  }
  return taken;
}
