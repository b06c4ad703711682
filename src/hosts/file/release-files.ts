import { strToU8 } from "fflate";
import { dayFromIso } from "../../age/day";
import type { PreparedRelease } from "../../release/prepared";
import type { WordsContext } from "../../release/words/words-context";
import { answerPictures, type Picture, picturesOf } from "../../report/release/pictures";
import { releaseCsv } from "../../report/release/release-csv";
import { releaseText } from "../../report/release/release-text";
import { releaseSheets } from "../../report/release-sheets";
import { scanCsv } from "./scan/scan-csv";
import { scanPng } from "./scan/scan-png";
import { scanSvg } from "./scan/scan-svg";
import { type ScanRules, scanText } from "./scan/scan-texts";
import { scanWorkbook } from "./scan/scan-workbook";
import { workbookBytes } from "./write/workbook-bytes";

export type ReleaseFormat = "xlsx" | "csv" | "svg" | "png";

/** A file of a release: its name is the stem that was asked for and this ending. */
export interface ReleaseFile {
  readonly ending: string;
  readonly bytes: Uint8Array;
}

export interface FilesOptions {
  readonly formats: readonly ReleaseFormat[];
  readonly rules: ScanRules;
  /** SVG from a picture: handed over, since its drawing library is larger than all the rest. */
  readonly draw: (picture: Picture) => Promise<string>;
  /** PNG from SVG, where the host has a drawer of pictures. */
  readonly png?: (svg: string) => Promise<Uint8Array>;
}

/**
 * Every file of a release in memory, scanned. Call `loadEngine` first.
 *
 * @throws {ReleaseRefused} where a file holds what it must not; then none of them may be saved
 */
export async function releaseFiles(
  release: PreparedRelease,
  context: WordsContext,
  { formats, rules, draw, png }: FilesOptions,
): Promise<ReleaseFile[]> {
  const files: ReleaseFile[] = [];
  if (formats.includes("xlsx")) files.push(await workbookFile(release, context, rules));
  if (formats.includes("csv")) files.push(...csvFiles(release, rules));
  if (formats.includes("svg") || formats.includes("png")) {
    files.push(...(await pictureFiles(release, context, { formats, rules, draw, ...(png && { png }) })));
  }
  if (formats.some((format) => format !== "xlsx")) files.push(textFile(release, context, rules));
  return files;
}

async function workbookFile(release: PreparedRelease, context: WordsContext, rules: ScanRules): Promise<ReleaseFile> {
  const created = dayFromIso(release.asOf);
  if (created === null) throw new RangeError("releaseFiles: the release has no as-of date");
  const bytes = workbookBytes(releaseSheets(release, context), { created });
  await scanWorkbook(bytes, rules);
  return { ending: ".xlsx", bytes };
}

function csvFiles({ tables }: PreparedRelease, rules: ScanRules): ReleaseFile[] {
  return tables.map((table) => {
    const [ending, text] = [`-${table.id}.csv`, releaseCsv(table)];
    scanCsv(ending.slice(1), text, rules);
    return { ending, bytes: strToU8(text) };
  });
}

async function pictureFiles(
  { tables }: PreparedRelease,
  context: WordsContext,
  { formats, rules, draw, png }: FilesOptions,
): Promise<ReleaseFile[]> {
  const files: ReleaseFile[] = [];
  const pictures = context.answered
    ? answerPictures(tables, context)
    : tables.flatMap((table) => picturesOf(table, context));
  for (const picture of pictures) {
    const svg = await draw(picture);
    scanSvg(`${picture.name}.svg`, svg, rules);
    if (formats.includes("svg")) files.push({ ending: `-${picture.name}.svg`, bytes: strToU8(svg) });
    if (formats.includes("png") && png) files.push(pngFile(picture.name, await png(svg)));
  }
  return files;
}

function pngFile(name: string, bytes: Uint8Array): ReleaseFile {
  scanPng(`${name}.png`, bytes);
  return { ending: `-${name}.png`, bytes };
}

function textFile(release: PreparedRelease, context: WordsContext, rules: ScanRules): ReleaseFile {
  const [ending, text] = ["-read-me.txt", releaseText(release, context)];
  for (const line of text.split("\n")) scanText(ending.slice(1), line, rules);
  return { ending, bytes: strToU8(text) };
}
