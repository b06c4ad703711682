import { sha256 } from "@noble/hashes/sha2";
import { bytesToHex } from "@noble/hashes/utils";
import { CELL, type Grid } from "../workbook/cells";
import type { CellRange, WorkbookIn } from "../workbook/workbook";
import type { TableUse } from "./records";

/**
 * SHA-256 of the cells of the tables used, hexadecimal: the same for the same cells, however the file was read and
 * wherever on its sheet a table stands. Each cell is its kind and its value, row by row: numbers (and dates, which are
 * numbers with a format) as eight bytes, texts as their length and UTF-8.
 */
export function fingerprintOf(workbook: WorkbookIn, tables: readonly TableUse[]): string {
  const sink = new Sink();
  sink.number(workbook.dateSystem);
  for (const { table, sheet, address } of tables) {
    const grid = workbook.sheets.find((each) => each.name === sheet)?.grid;
    const range = rangeOf(address);
    if (!grid || !range) throw new RangeError("fingerprintOf: a table that is not in the workbook");
    sink.text(encoder.encode(table));
    sink.number(range.bottom - range.top + 1);
    sink.number(range.right - range.left + 1);
    putCells(sink, grid, range);
  }
  return bytesToHex(sink.digest());
}

const encoder = new TextEncoder();
const CHUNK_BYTES = 1 << 16;

function putCells(sink: Sink, grid: Grid, range: CellRange): void {
  const encoded: (Uint8Array | undefined)[] = [];
  for (let row = range.top; row <= range.bottom; row += 1) {
    for (let column = range.left; column <= range.right; column += 1) {
      const cells = grid.columns[column];
      const kind = cells?.kinds[row] ?? CELL.empty;
      sink.byte(kind === CELL.date ? CELL.number : kind);
      if (kind === CELL.empty || kind === CELL.noCachedValue) continue;
      const value = cells?.values[row] as number;
      if (kind !== CELL.text && kind !== CELL.error) sink.number(value);
      else sink.text((encoded[value] ??= encoder.encode(grid.strings[value])));
    }
  }
}

/** Gathers bytes into chunks, so that the hash is fed a few large pieces. */
class Sink {
  private readonly hash = sha256.create();
  private readonly bytes = new Uint8Array(CHUNK_BYTES);
  private readonly view = new DataView(this.bytes.buffer);
  private length = 0;

  byte(value: number): void {
    if (this.length + 1 > CHUNK_BYTES) this.flush();
    this.bytes[this.length] = value;
    this.length += 1;
  }

  number(value: number): void {
    if (this.length + 8 > CHUNK_BYTES) this.flush();
    this.view.setFloat64(this.length, value, true);
    this.length += 8;
  }

  text(utf8: Uint8Array): void {
    this.number(utf8.length);
    if (this.length + utf8.length > CHUNK_BYTES) this.flush();
    if (utf8.length > CHUNK_BYTES) this.hash.update(utf8);
    else {
      this.bytes.set(utf8, this.length);
      this.length += utf8.length;
    }
  }

  digest(): Uint8Array {
    this.flush();
    return this.hash.digest();
  }

  private flush(): void {
    this.hash.update(this.bytes.subarray(0, this.length));
    this.length = 0;
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
