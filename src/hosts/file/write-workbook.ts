import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { SheetOut } from "../../workbook/sheets";
import { loadEngine } from "./write/engine";
import { workbookBytes, type WorkbookOptions } from "./write/workbook-bytes";

/**
 * An xlsx file of values only, the same bytes for the same sheets. For Node; a browser calls `loadEngine` and
 * `workbookBytes` itself.
 *
 * @throws {RangeError} when a sheet holds a number that is not finite, or a table without proper headings
 */
export function writeWorkbook(sheets: readonly SheetOut[], options: WorkbookOptions): Uint8Array {
  loadEngine(readFileSync(fileURLToPath(ENGINE_FILE)));
  return workbookBytes(sheets, options);
}

/** Written so that webpack carries the file into the bundle's folder and plain Node finds it in place. */
const ENGINE_FILE = new URL("../../../node_modules/wasm-xlsxwriter/web/wasm_xlsxwriter_bg.wasm", import.meta.url);
