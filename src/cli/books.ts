import { existsSync, readdirSync, realpathSync } from "node:fs";
import path from "node:path";
import { nodeInflate } from "../hosts/file/node-inflate";
import { isDatabase, isExtract, readExtract, UnreadableExtract } from "../hosts/data/read-extract";
import { readWorkbook, UnreadableWorkbook } from "../hosts/file/read-workbook";
import { parseProvenanceLine } from "../report/again/provenance-line";
import { oneWorkbook, type SourceIn } from "../workbook/sources";
import type { WorkbookIn } from "../workbook/workbook";
import { badRequest, unreadable } from "./failure";
import { isFolder, readBytes } from "./files";
import { complain, progress } from "./say";

/**
 * Opens what a command was given as one workbook: files in the order given, those of a folder by name.
 *
 * @param order - names of files that come first, in this order, where all of them are there
 */
export async function openBooks(books: readonly string[], order: readonly string[] = []): Promise<WorkbookIn> {
  refuseTwice(books);
  const sources: SourceIn[] = [];
  for (const each of named(books)) {
    const workbook = await openWorkbook(each.path);
    // A report says how to make it again; in a folder it stands beside the records that it was made of.
    if (each.isInFolder && isReport(workbook)) complain(`${each.path} is a report of Windowline: it is not read.`);
    else sources.push({ file: each.file, workbook });
  }
  if (sources.length === 0)
    throw unreadable(
      `${books.map(shownName).join(", ")}: no workbook of records (.xlsx, .csv, .parquet, .sqlite) is in this folder.`,
    );
  return oneWorkbook(inOrder(sources, order));
}

/** Every file that is read: a folder stands for its workbooks and extracts. */
export function filesOf(books: readonly string[]): string[] {
  return books.flatMap((book) => (isFolder(book) ? inFolder(book) : [book]));
}

async function openWorkbook(book: string): Promise<WorkbookIn> {
  const name = shownName(book);
  progress(`Opening ${name}`);
  try {
    return isExtract(book) ? await readExtract(book) : await readWorkbook(readBytes(book), { inflate: nodeInflate });
  } catch (error) {
    if (error instanceof UnreadableWorkbook || error instanceof UnreadableExtract)
      throw unreadable(`${name}: ${error.message}`);
    throw error;
  }
}

/** A source as it may be shown: a file by its path, a database without the user and password of its address. */
export function shownName(book: string): string {
  return isDatabase(book) ? databaseName(book) : book;
}

/** Server and database of an address, without the user and password that it may have. */
function databaseName(address: string): string {
  try {
    const { hostname, pathname } = new URL(address);
    return `${hostname}${decodeURIComponent(pathname)}`;
  } catch {
    throw badRequest("The address of the database cannot be read. Write it as postgres://SERVER/DATABASE.");
  }
}

const ENDINGS = /\.(xlsx|csv|parquet|sqlite)$/i;

/** By code unit, so that no locale can reorder them; not what a spreadsheet program leaves beside an open workbook. */
function inFolder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => !entry.isDirectory() && ENDINGS.test(entry.name) && !/^(~\$|\.)/.test(entry.name))
    .map(({ name }) => path.join(folder, name))
    .sort((a, b) => (a < b ? -1 : 1));
}

interface Named {
  readonly path: string;
  /** As findings call it: its name, with as many folders before it as tell it from the others. */
  readonly file: string;
  readonly isInFolder: boolean;
}

function named(books: readonly string[]): Named[] {
  const files = books.flatMap((book) => filesOf([book]).map((file) => ({ file, isInFolder: isFolder(book) })));
  const parts = files.map(({ file }) => (isDatabase(file) ? [databaseName(file)] : path.resolve(file).split(path.sep)));
  const name = (at: number, depth: number) => (parts[at] as string[]).slice(-depth).join("/");
  return files.map(({ file, isInFolder }, at) => {
    let depth = 1;
    const isShared = () => parts.some((_, other) => other !== at && name(other, depth) === name(at, depth));
    while (depth < (parts[at] as string[]).length && isShared()) depth += 1;
    return { path: file, file: name(at, depth), isInFolder };
  });
}

function refuseTwice(books: readonly string[]): void {
  const seen = new Set<string>();
  for (const file of filesOf(books)) {
    const identity = existsSync(file) ? realpathSync(file) : path.resolve(file);
    if (seen.has(identity))
      throw badRequest(`${shownName(file)} is named twice. Name each file once. Nothing was written.`);
    seen.add(identity);
  }
}

function isReport({ sheets }: WorkbookIn): boolean {
  return sheets.some(({ grid }) => grid.strings.some((text) => parseProvenanceLine(text) !== null));
}

function inOrder(sources: readonly SourceIn[], order: readonly string[]): SourceIn[] {
  const places = sources.map(({ file }) => order.indexOf(file));
  if (order.length !== sources.length || places.includes(-1)) return [...sources];
  return [...sources].sort((a, b) => order.indexOf(a.file) - order.indexOf(b.file));
}
