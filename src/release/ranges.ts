import type { Attack } from "./attack";
import { knowledgeOf, type Knowledge } from "./knowledge";
import type { CountRange } from "./release-table";
import type { CountSystem } from "./system";

/** Every count as a range of one width: 0 to 10, 11 to 21 and so on. */
export interface Ranges {
  /** Whole numbers in a range. */
  readonly width: number;
  /** What prints of each cell of the release; null for cells that do not print. */
  readonly printed: readonly (CountRange | null)[];
  readonly knowledge: Knowledge;
  readonly attack: Attack;
}

/** Doubled no more often than this: beyond it ranges say too little. */
const DOUBLINGS = 4;

/**
 * The narrowest ranges that are safe: as wide as the minimum, or doubled until the attack proves no small count.
 *
 * The first range starts at 0, so that a small count cannot be told from none.
 *
 * @param attack - of what an outsider knows
 * @param isTimeUp - true ends the search with the attempt under way
 * @returns the last attempt; its attack tells whether it is safe
 */
export function rangeCounts(
  system: CountSystem,
  minimum: number,
  attack: (knowledge: Knowledge) => Attack,
  isTimeUp: () => boolean = () => false,
): Ranges {
  let ranges = rangesOf(system, minimum, attack);
  for (let at = 0; at < DOUBLINGS && ranges.attack.disclosures.length > 0 && !isTimeUp(); at += 1) {
    ranges = rangesOf(system, ranges.width * 2, attack);
  }
  return ranges;
}

function rangesOf(system: CountSystem, width: number, attack: (knowledge: Knowledge) => Attack): Ranges {
  const knowledge = knowledgeOf(system, new Uint8Array(system.cells.length).fill(1));
  const printed = system.cells.map(({ count, showing }, cell): CountRange | null => {
    if (showing !== "table" || count === null) return null;
    const from = Math.floor(count / width) * width;
    knowledge.lower[cell] = Math.max(knowledge.lower[cell] as number, from);
    knowledge.upper[cell] = from + width - 1;
    return { from, to: from + width - 1 };
  });
  return { width, printed, knowledge, attack: attack(knowledge) };
}
