import { initSync } from "wasm-xlsxwriter/web";

let loaded = false;

/**
 * Makes the xlsx writer ready from the bytes of its WebAssembly file, wherever the host keeps them. A second call does
 * nothing. In a browser hand over a module compiled beforehand: large ones may not be compiled at once there.
 */
export function loadEngine(wasm: BufferSource | WebAssembly.Module): void {
  if (loaded) return;
  initSync({ module: wasm });
  loaded = true;
}

export function assertEngine(): void {
  if (!loaded) throw new RangeError("workbookBytes: call loadEngine with the writer's WebAssembly bytes first");
}
