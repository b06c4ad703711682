import type { CountSystem } from "./system";

/**
 * What an outsider knows of each cell before reasoning: it lies between `lower` and `upper`, both included.
 *
 * A count that is shown has both ends equal; a hidden one is known to be a whole number from 0 up, or from what a row says
 * by being there.
 */
export interface Knowledge {
  readonly lower: Float64Array;
  /** Infinity: no end. */
  readonly upper: Float64Array;
}

/** @param hidden - 1 for every cell of the release that prints as hidden; cells that are never printed count as hidden */
export function knowledgeOf(system: CountSystem, hidden: Uint8Array): Knowledge {
  const isKnown = system.cells.map(({ showing }, cell) => showing === "out" || (showing === "table" && !hidden[cell]));
  return {
    lower: Float64Array.from(system.cells, ({ count, atLeast = 0 }, cell) => (isKnown[cell] ? known(count) : atLeast)),
    upper: Float64Array.from(system.cells, ({ count }, cell) => (isKnown[cell] ? known(count) : Infinity)),
  };
}

function known(count: number | null): number {
  if (count === null) throw new RangeError("knowledgeOf: a count that nobody knows cannot be shown");
  return count;
}
