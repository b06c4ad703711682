import { sha256 } from "@noble/hashes/sha2";
import { bytesToHex, concatBytes } from "@noble/hashes/utils";
import { CELL, type Grid } from "../workbook/cells";
import { sheetAt } from "../workbook/sources";
import type { CellRange, WorkbookIn } from "../workbook/workbook";
import type { Decision } from "./corrections/decisions";
import type { Records, TableUse } from "./records";

/** What a report was made from, told apart without a cell of it. */
export interface Source {
  /** Of all the tables used. */
  readonly fingerprint: string;
  /** One entry a file, in the order in which they were read; only where there are several. */
  readonly files?: readonly FilePrint[];
  /** One entry a table, whatever sheets its rows are on. */
  readonly records: readonly TablePrint[];
  /** How many children and observations each site has; empty where no column names sites. */
  readonly sites: readonly SitePrint[];
  /** SHA-256 of the corrections, in any order; null where there is none. */
  readonly corrections: string | null;
}

export interface TablePrint {
  readonly table: string;
  readonly rows: number;
  /** SHA-256 of the cells of its rows, in any order. */
  readonly fingerprint: string;
}

export interface FilePrint {
  readonly file: string;
  readonly rows: number;
  readonly fingerprint: string;
}

export interface SitePrint {
  readonly site: string;
  readonly children: number;
  readonly observations: number;
}

type Read = Pick<Records, "input" | "children" | "enrolments" | "observations">;

export function sourceOf(workbook: WorkbookIn, records: Read, decisions: readonly Decision[]): Source {
  const tables = records.input;
  const print = (own: readonly TableUse[]) => ({
    rows: own.reduce((sum, each) => sum + each.rows, 0),
    fingerprint: fingerprintOf(workbook, own),
  });
  const files = [...new Set(workbook.sheets.flatMap(({ file }) => file ?? []))];
  return {
    fingerprint: fingerprintOf(workbook, tables),
    ...(files.length === 0
      ? {}
      : { files: files.map((file) => ({ file, ...print(tables.filter((each) => each.file === file)) })) }),
    records: [...new Set(tables.map(({ table }) => table))].map((table) => ({
      table,
      ...print(tables.filter((each) => each.table === table)),
    })),
    sites: sitesOf(records),
    corrections: decisions.length === 0 ? null : fingerprintOfCorrections(decisions),
  };
}

/** Each child counts at the site of its last row of Children. */
function sitesOf({ children, enrolments, observations }: Read): SitePrint[] {
  const column = enrolments.columns.find(({ heading }) => heading === "Site");
  if (!column) return [];
  const siteOf = new Array<string>(children.ids.length).fill("");
  enrolments.child.forEach((child, row) => (siteOf[child] = column.values[row] as string));
  const counts = new Map<string, { children: number; observations: number }>();
  const at = (site: string) => {
    const found = counts.get(site) ?? { children: 0, observations: 0 };
    counts.set(site, found);
    return found;
  };
  for (const site of siteOf) at(site).children += 1;
  for (const child of observations.child) at(siteOf[child] as string).observations += 1;
  return [...counts].map(([site, count]) => ({ site, ...count })).sort((a, b) => (a.site < b.site ? -1 : 1));
}

function fingerprintOfCorrections(decisions: readonly Decision[]): string {
  const texts = decisions.map((decision) => JSON.stringify(Object.entries(decision).sort(byKey))).sort();
  return bytesToHex(sha256(encoder.encode(texts.join("\n"))));
}

function byKey([a]: [string, unknown], [b]: [string, unknown]): number {
  return a < b ? -1 : 1;
}

/**
 * SHA-256 of the cells of the tables used, hexadecimal: the same for the same rows in any order, however the file was read
 * and wherever on its sheet a table stands. Each cell is its kind and its value: numbers (and dates, which are numbers
 * with a format) as eight bytes, texts as their length and UTF-8. Of each table the hashes of its rows are added up
 * (modulo 2^256), so that no order of rows counts. Where tables come from several files, no order of files counts either, and
 * no name of a file.
 *
 * Source: sums of hashes for a set in no order: Bellare & Micciancio (1997), EUROCRYPT '97, 163-192.
 */
export function fingerprintOf(workbook: WorkbookIn, tables: readonly TableUse[]): string {
  const isOneFile = tables.every(({ file }) => file === undefined);
  const all = sha256.create();
  if (isOneFile) all.update(systemBytes(workbook.dateSystem));
  const parts = tables.map((table) => partOf(workbook, table, isOneFile));
  if (!isOneFile) parts.sort(byBytes);
  for (const part of parts) all.update(part);
  return bytesToHex(all.digest());
}

/** What one table adds: its name, its size and the sum of its rows; among several files its date system too. */
function partOf(workbook: WorkbookIn, use: TableUse, isOneFile: boolean): Uint8Array {
  const sheet = sheetAt(workbook, use);
  const range = rangeOf(use.address);
  if (!sheet || !range) throw new RangeError("fingerprintOf: a table that is not in the workbook");
  const row = new RowBytes();
  if (!isOneFile) systemBytes(sheet.dateSystem ?? workbook.dateSystem).forEach((byte) => row.byte(byte));
  row.text(encoder.encode(use.table));
  row.number(range.bottom - range.top + 1);
  row.number(range.right - range.left + 1);
  const head = row.taken().slice();
  return concatBytes(head, sumOfRows(sheet.grid, range, row));
}

function systemBytes(system: WorkbookIn["dateSystem"]): Uint8Array {
  return Uint8Array.of(system >> 8, system & 0xff);
}

function byBytes(a: Uint8Array, b: Uint8Array): number {
  const [first, second] = [bytesToHex(a), bytesToHex(b)];
  return first < second ? -1 : first > second ? 1 : 0;
}

const encoder = new TextEncoder();
const FIRST_ROOM_BYTES = 1 << 10;

function sumOfRows(grid: Grid, range: CellRange, bytes: RowBytes): Uint8Array {
  const encoded: (Uint8Array | undefined)[] = [];
  const sum = new Uint8Array(32);
  for (let row = range.top; row <= range.bottom; row += 1) {
    for (let column = range.left; column <= range.right; column += 1) {
      const cells = grid.columns[column];
      const kind = cells?.kinds[row] ?? CELL.empty;
      bytes.byte(kind === CELL.date ? CELL.number : kind);
      if (kind === CELL.empty || kind === CELL.noCachedValue) continue;
      const value = cells?.values[row] as number;
      if (kind !== CELL.text && kind !== CELL.error) bytes.number(value);
      else bytes.text((encoded[value] ??= encoder.encode(grid.strings[value])));
    }
    add(sum, sha256(bytes.taken()));
  }
  return sum;
}

/** Adds a number of 32 bytes, the least of them first. */
function add(sum: Uint8Array, hash: Uint8Array): void {
  let carry = 0;
  for (let at = 0; at < sum.length; at += 1) {
    carry += (sum[at] as number) + (hash[at] as number);
    sum[at] = carry;
    carry >>>= 8;
  }
}

/** The bytes of one row, in a workspace that is used again for each row. */
class RowBytes {
  private bytes = new Uint8Array(FIRST_ROOM_BYTES);
  private view = new DataView(this.bytes.buffer);
  private length = 0;

  byte(value: number): void {
    this.reserve(1);
    this.bytes[this.length] = value;
    this.length += 1;
  }

  number(value: number): void {
    this.reserve(8);
    this.view.setFloat64(this.length, value, true);
    this.length += 8;
  }

  text(utf8: Uint8Array): void {
    this.number(utf8.length);
    this.reserve(utf8.length);
    this.bytes.set(utf8, this.length);
    this.length += utf8.length;
  }

  /** What was put in since the last time. */
  taken(): Uint8Array {
    const taken = this.bytes.subarray(0, this.length);
    this.length = 0;
    return taken;
  }

  private reserve(more: number): void {
    if (this.length + more <= this.bytes.length) return;
    const wider = new Uint8Array(2 * (this.length + more));
    wider.set(this.bytes.subarray(0, this.length));
    this.bytes = wider;
    this.view = new DataView(wider.buffer);
  }
}

function rangeOf(address: string): CellRange | null {
  const match = /^([A-Z]+)(\d+):([A-Z]+)(\d+)$/.exec(address);
  if (!match) return null;
  const [, left, top, right, bottom] = match as unknown as [string, string, string, string, string];
  return { top: Number(top) - 1, left: columnNumber(left), bottom: Number(bottom) - 1, right: columnNumber(right) };
}

function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters) number = number * 26 + letter.charCodeAt(0) - 64;
  return number - 1;
}
