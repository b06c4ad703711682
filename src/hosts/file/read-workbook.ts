import type { WorkbookIn } from "../../workbook/workbook";
import { type Inflate, usualInflate } from "./read/inflate";
import { type Limits, USUAL_LIMITS } from "./read/limits";
import { PackageParts } from "./read/package-parts";
import { refuseDoctypes } from "./read/prologs";
import { readSharedTexts } from "./read/read-shared-texts";
import { readSheet } from "./read/read-sheet";
import type { BookContext } from "./read/sheet-cells";
import { dateStyles } from "./read/styles";
import { Texts } from "./read/texts";
import { workbookPart } from "./read/workbook-part";

export { UnreadableWorkbook } from "./read/unreadable";
export type { Inflate } from "./read/inflate";
export type { Limits } from "./read/limits";

export interface ReadOptions {
  readonly limits?: Partial<Limits>;
  /** Inflation, where the host has a faster one than the browser's or fflate's. */
  readonly inflate?: Inflate;
  /** False reads every cell through the kept XML parser: slower, for tests that compare the two. */
  readonly scan?: boolean;
}

/**
 * An .xlsx file as typed columns. Runs in Node and in a browser; reads nothing but the bytes given.
 *
 * Cells that show a date keep their serial number. A formula counts as its cached value.
 * Source: ECMA-376 (Office Open XML), Parts 1, 2 and 4; PKWARE APPNOTE 6.3.10.
 *
 * @throws {UnreadableWorkbook} when the file is no such workbook, is damaged, or goes beyond a limit
 */
export async function readWorkbook(bytes: Uint8Array, options: ReadOptions = {}): Promise<WorkbookIn> {
  const limits = { ...USUAL_LIMITS, ...options.limits };
  const parts = new PackageParts(bytes, limits, options.inflate ?? usualInflate);
  await refuseDoctypes(parts);
  const { dateSystem, sheets, styles, sharedTexts } = await workbookPart(parts, limits);
  const texts = new Texts(limits);
  const scan = options.scan ?? true;
  if (sharedTexts !== null) await readSharedTexts(parts, sharedTexts, texts, scan);
  const book: BookContext = { texts, limits, dateSystem, dateStyles: await dateStyles(parts, styles, limits) };
  const read = [];
  for (const sheet of sheets) read.push(await readSheet(parts, sheet, book, scan));
  return { dateSystem, sheets: read };
}
