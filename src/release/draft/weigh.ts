import type { DraftTable } from "../release-table";
import type { CountSystem } from "../system";

/**
 * The system with each loss times the rows that print the count: the children of a band stand in the row of every skill,
 * and hiding them takes one figure from each.
 */
export function weighed(system: CountSystem, drafts: readonly DraftTable[]): CountSystem {
  const prints = new Int32Array(system.cells.length);
  for (const entry of drafts.flatMap(({ rows }) => rows.flat())) if (entry.kind === "count") prints[entry.cell]! += 1;
  const cells = system.cells.map((cell, at) => ({ ...cell, loss: cell.loss * Math.max(1, prints[at] as number) }));
  return { ...system, cells };
}
