import type { Solver } from "../src/release/linear-model";
import { notEstimable } from "./failure";

let solver: Solver | null = null;

/** Given once by the host, before it calls a function that the registry marks as needing it. */
export function setSolver(loaded: Solver): void {
  solver = loaded;
}

export function hasSolver(): boolean {
  return solver !== null;
}

export function currentSolver(): Solver {
  if (solver === null) throw notEstimable("The solver did not load: reload the page, then recalculate.");
  return solver;
}
