import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { drawPicture } from "../hosts/file/draw-picture";
import { pngOf, PngMissing } from "../hosts/file/picture-png";
import { type ReleaseFile, releaseFiles, type ReleaseFormat } from "../hosts/file/release-files";
import { ReleaseRefused } from "../hosts/file/scan/refused";
import type { ScanRules } from "../hosts/file/scan/scan-texts";
import { loadEngine } from "../hosts/file/write/engine";
import type { PreparedRelease } from "../release/prepared";
import type { WordsContext } from "../release/words/words-context";
import { badRequest } from "./failure";
import { writeTogether } from "./files";
import { checkPlaces } from "./release-checks";
import type { RequestOf } from "./request";

export async function made(
  release: PreparedRelease,
  context: WordsContext,
  formats: readonly ReleaseFormat[],
  rules: ScanRules,
): Promise<ReleaseFile[]> {
  loadEngine(readFileSync(fileURLToPath(ENGINE_FILE)));
  try {
    return await releaseFiles(release, context, { formats, rules, draw: drawPicture, png: pngOf });
  } catch (error) {
    if (error instanceof ReleaseRefused || error instanceof PngMissing) throw badRequest(error.message);
    throw error;
  }
}

/** Written so that webpack carries the file into the bundle's folder and plain Node finds it in place. */
const ENGINE_FILE = new URL("../../node_modules/wasm-xlsxwriter/web/wasm_xlsxwriter_bg.wasm", import.meta.url);

/** Names of the files written; the ledger comes last, so that it never speaks of a release that is not there. */
export function save(request: RequestOf<"release">, files: readonly ReleaseFile[], ledger: string | null): string[] {
  const stem = request.out.replace(/\.xlsx$/i, "");
  const named = files.map(({ ending, bytes }) => ({
    file: ending === ".xlsx" ? request.out : `${stem}${ending}`,
    content: bytes as string | Uint8Array,
  }));
  const outputs = named.map(({ file }) => file);
  checkPlaces(request, outputs);
  writeTogether(
    request.ledger === null || ledger === null ? named : [...named, { file: request.ledger, content: ledger }],
  );
  return outputs;
}
