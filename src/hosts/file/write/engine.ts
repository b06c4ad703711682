import { initSync, type InitOutput } from "wasm-xlsxwriter/web";

let engine: InitOutput | null = null;

/**
 * Makes the xlsx writer ready from the bytes of its WebAssembly file, wherever the host keeps them. A second call does
 * nothing. In a browser hand over a module compiled beforehand: large ones may not be compiled at once there.
 */
export function loadEngine(wasm: BufferSource | WebAssembly.Module): void {
  engine ??= initSync({ module: wasm });
}

export function assertEngine(): void {
  loadedEngine();
}

/**
 * Lets the writer's memory grow once for so many cells. Left alone it grows in thousands of small steps, and each makes
 * the JavaScript engine collect its own garbage, all records and findings included.
 */
export function reserveMemory(cellCount: number): void {
  const { memory, __wbindgen_malloc, __wbindgen_free } = loadedEngine();
  const bytes = Math.min(cellCount * BYTES_PER_CELL, MOST_RESERVED_BYTES) - memory.buffer.byteLength;
  // What is freed stays with the writer, which fills it from then on.
  if (bytes > 0) __wbindgen_free(__wbindgen_malloc(bytes, 1), bytes, 1);
}

/** Measured over sheets of short texts. */
const BYTES_PER_CELL = 300;
const MOST_RESERVED_BYTES = 512 * 1024 * 1024;

function loadedEngine(): InitOutput {
  if (!engine) throw new RangeError("workbookBytes: call loadEngine with the writer's WebAssembly bytes first");
  return engine;
}
