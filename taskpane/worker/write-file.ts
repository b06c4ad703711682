import type { Day } from "../../src/age/day";
import { loadEngine } from "../../src/hosts/file/write/engine";
import { workbookBytes } from "../../src/hosts/file/write/workbook-bytes";
import type { SheetOut } from "../../src/workbook/sheets";

const ENGINE_FILE = new URL("../../node_modules/wasm-xlsxwriter/web/wasm_xlsxwriter_bg.wasm", import.meta.url);

/** The report as an xlsx file; its writer is fetched from beside this script the first time. */
export async function writeFile(sheets: readonly SheetOut[], created: Day): Promise<Uint8Array<ArrayBuffer>> {
  loadEngine(await engine());
  return new Uint8Array(workbookBytes(sheets, { created }));
}

export async function engine(): Promise<WebAssembly.Module> {
  const file = await fetch(ENGINE_FILE);
  if (!file.ok) throw new Error("The file writer did not load.");
  return WebAssembly.compile(await file.arrayBuffer());
}
