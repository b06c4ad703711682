import { type Zippable, zipSync } from "fflate";
import { loadEngine } from "../../../src/hosts/file/write/engine";
import { type ReleaseFile, releaseFiles } from "../../../src/hosts/file/release-files";
import { ReleaseRefused } from "../../../src/hosts/file/scan/refused";
import type { PreparedRelease } from "../../../src/release/prepared";
import type { WordsContext } from "../../../src/release/words/words-context";
import type { Picture } from "../../../src/report/release/pictures";
import type { OutputRules } from "../../../src/report/release/release-rules";
import type { ReleaseFormat } from "./released";
import { Refused } from "../refused";
import { engine } from "../write-file";

/** One file of a release, scanned: the workbook, or all of its CSV files or pictures together with their words. */
export async function fileOf(
  release: PreparedRelease,
  context: WordsContext,
  rules: OutputRules,
  format: ReleaseFormat,
): Promise<Uint8Array<ArrayBuffer>> {
  if (format === "xlsx") loadEngine(await engine());
  const files = await scanned(release, context, rules, format);
  const [only] = files;
  return new Uint8Array(format === "xlsx" && only ? only.bytes : zipped(files, release));
}

async function scanned(
  release: PreparedRelease,
  context: WordsContext,
  rules: OutputRules,
  format: ReleaseFormat,
): Promise<ReleaseFile[]> {
  try {
    return await releaseFiles(release, context, { formats: [format], rules, draw });
  } catch (error) {
    if (error instanceof ReleaseRefused) throw new Refused(error.message);
    throw error;
  }
}

async function draw(picture: Picture): Promise<string> {
  return (await import("../../../src/hosts/file/draw-picture")).drawPicture(picture);
}

/** A zip holds times of no time zone: noon of the as-of date in each, so that two runs give the same bytes. */
function zipped(files: readonly ReleaseFile[], { asOf }: PreparedRelease): Uint8Array {
  const [year, month, day] = asOf.split("-").map(Number) as [number, number, number];
  const mtime = new Date(year, month - 1, day, 12);
  return zipSync(
    Object.fromEntries(
      files.map(({ ending, bytes }): [string, Zippable[string]] => [`release-${asOf}${ending}`, bytes]),
    ),
    { mtime },
  );
}
