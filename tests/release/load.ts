import loadHighs from "highs";
import { highsSolver } from "../../src/release/highs-solver";
import type { Solver } from "../../src/release/linear-model";

let loaded: Promise<Solver> | null = null;

/** The solver, loaded once for a test file. */
export function loadSolver(): Promise<Solver> {
  loaded ??= loadHighs().then(highsSolver);
  return loaded;
}
