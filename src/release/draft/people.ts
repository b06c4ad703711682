import type { CellDraft } from "./builder";
import type { Families } from "./families";

/** Children behind a count, one entry for each time that one is counted. */
export type Counted = readonly number[];

/** Count and families, as a cell is drafted from them. */
export function peopleIn(families: Families, children: Counted): Pick<CellDraft, "count" | "contributors"> {
  const own = new Set(children.map((child) => families.ofChild[child] as number));
  return { count: children.length, contributors: own.size };
}

export function without(children: Counted, others: Iterable<number>): number[] {
  const gone = new Set(others);
  return children.filter((child) => !gone.has(child));
}
