import { highsSolver } from "../../src/release/highs-solver";
import type { Solver } from "../../src/release/linear-model";

const ENGINE_FILE = new URL("../../node_modules/highs/build/highs.wasm", import.meta.url);

let loading: Promise<Solver> | null = null;

/** The solver, in a browser's worker: its script and its engine come from beside this one the first time they are needed. */
export function loadSolver(): Promise<Solver> {
  loading ??= load().catch((error: unknown) => {
    loading = null;
    throw error;
  });
  return loading;
}

async function load(): Promise<Solver> {
  const { default: loadHighs } = await import("highs");
  return highsSolver(await loadHighs({ locateFile: () => ENGINE_FILE.href }));
}
