import { fileURLToPath } from "node:url";
import loadHighs from "highs";
import { highsSolver } from "../../release/highs-solver";
import type { Solver } from "../../release/linear-model";

let loading: Promise<Solver> | null = null;

/** The solver of the command line: its WebAssembly lies beside the bundle. Loaded when it is first needed. */
export function loadSolver(): Promise<Solver> {
  loading ??= loadHighs({ locateFile: () => fileURLToPath(ENGINE_FILE) }).then(highsSolver);
  return loading;
}

/** Written so that webpack carries the file into the bundle's folder and plain Node finds it in place. */
const ENGINE_FILE = new URL("../../../node_modules/highs/build/highs.wasm", import.meta.url);
