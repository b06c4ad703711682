import { isUtf8 } from "node:buffer";
import { closeSync, openSync, readSync } from "node:fs";
import { torn, UnreadableExtract } from "./unreadable-extract";

/** What the bytes of a CSV file say before it is read. */
export interface CsvScan {
  readonly delimiter: string;
  readonly width: number;
  /** Records that are not blank, the headings among them. */
  readonly records: number;
  /** Places of blank lines among all records, counted from 0. */
  readonly blanks: readonly number[];
}

const BLOCK_BYTES = 1 << 20;
const QUOTE = 0x22;
const LF = 0x0a;
const CR = 0x0d;

/**
 * Goes over the bytes of a CSV file once: whether it is whole, how many records it has, and where lines are blank. The reader drops
 * blank lines without a word, reads on over a zero byte, and tells no line where line ends are mixed: so they are found here.
 *
 * Source: RFC 4180, section 2.
 *
 * @throws {UnreadableExtract} with the line of what is torn
 */
export function scanCsv(path: string): CsvScan {
  const file = openSync(path, "r");
  try {
    const scan = new Scan();
    const block = Buffer.allocUnsafe(BLOCK_BYTES);
    for (let read = readSync(file, block); read > 0; read = readSync(file, block)) scan.take(block, read);
    return scan.finished();
  } finally {
    closeSync(file);
  }
}

/** The first line whose bytes are not UTF-8; null where all are. Lines are those of line feeds, whatever quotes say. */
export function firstLineNotUtf8(path: string): number | null {
  const file = openSync(path, "r");
  try {
    const block = Buffer.allocUnsafe(BLOCK_BYTES);
    let rest: Buffer = Buffer.alloc(0);
    let line = 1;
    for (let read = readSync(file, block); read > 0; read = readSync(file, block)) {
      const bytes = Buffer.concat([rest, block.subarray(0, read)]);
      let from = 0;
      for (let to = bytes.indexOf(LF); to >= 0; to = bytes.indexOf(LF, from)) {
        if (!isUtf8(bytes.subarray(from, to))) return line;
        from = to + 1;
        line += 1;
      }
      rest = bytes.subarray(from);
    }
    return isUtf8(rest) ? null : line;
  } finally {
    closeSync(file);
  }
}

class Scan {
  private readonly head: number[] = [];
  private readonly blanks: number[] = [];
  private line = 1;
  private recordLine = 1;
  private records = 0;
  private length = 0;
  private fields = 1;
  private width = 0;
  private delimiter = 0;
  private isQuoted = false;
  private atStart = true;
  private wasQuote = false;
  private wasReturn = false;
  private ends: "\n" | "\r\n" | null = null;

  take(block: Buffer, length: number): void {
    let from = 0;
    if (this.records === 0 && this.head.length === 0) from = this.skipMark(block, length);
    for (let at = from; at < length; at += 1) this.byte(block[at] as number);
  }

  finished(): CsvScan {
    if (this.isQuoted) torn(this.recordLine, "opens a quote that nothing closes");
    if (this.length > 0) this.endRecord();
    while (this.blanks.at(-1) === this.records - 1 && this.blanks.length > 0) {
      this.blanks.pop();
      this.records -= 1;
    }
    if (this.records === 0) throw new UnreadableExtract("the file is empty. Export it again.");
    const delimiter = String.fromCharCode(this.delimiter);
    return { delimiter, width: this.width, records: this.records - this.blanks.length, blanks: this.blanks };
  }

  private skipMark(block: Buffer, length: number): number {
    const [first, second, third] = block;
    if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff))
      throw new UnreadableExtract("the file is not UTF-8. Save it as “CSV UTF-8” and name that file.");
    return length >= 3 && first === 0xef && second === 0xbb && third === 0xbf ? 3 : 0;
  }

  private byte(byte: number): void {
    if (byte === 0) torn(this.line, "has a zero byte");
    if (byte === LF) this.line += 1;
    if (this.isQuoted) return this.quoted(byte);
    if (this.wasReturn && byte !== LF) torn(this.line, "has a line end that is none of the others");
    if (byte === QUOTE && (this.atStart || this.wasQuote)) return this.open();
    if (this.wasQuote && byte !== LF && byte !== CR && !this.isDelimiter(byte))
      torn(this.line, "has words after a closing quote");
    this.wasQuote = false;
    if (byte === LF) return this.endLine();
    this.wasReturn = byte === CR;
    if (this.wasReturn) return;
    this.length += 1;
    if (this.width === 0) this.head.push(byte);
    this.atStart = this.isDelimiter(byte);
    if (byte === this.delimiter) this.fields += 1;
  }

  private isDelimiter(byte: number): boolean {
    return this.width === 0 ? DELIMITERS.includes(byte) : byte === this.delimiter;
  }

  private open(): void {
    this.isQuoted = true;
    this.wasQuote = false;
    this.atStart = false;
    this.length += 1;
  }

  private quoted(byte: number): void {
    if (byte !== QUOTE) return;
    this.isQuoted = false;
    this.wasQuote = true;
  }

  private endLine(): void {
    const ends = this.wasReturn ? "\r\n" : "\n";
    if (this.ends !== null && this.ends !== ends) torn(this.line - 1, "ends otherwise than the lines before it");
    this.ends = ends;
    this.endRecord();
    this.recordLine = this.line;
  }

  private endRecord(): void {
    if (this.length === 0) this.blanks.push(this.records);
    else if (this.width === 0) this.headings();
    else if (this.fields !== this.width) {
      const cells = `${this.fields} ${this.fields === 1 ? "cell" : "cells"}`;
      torn(this.recordLine, `has ${cells}, and the line of headings has ${this.width}`);
    }
    this.records += 1;
    this.length = 0;
    this.fields = 1;
    this.atStart = true;
    this.wasReturn = false;
    this.wasQuote = false;
  }

  /** The line of headings says what stands between cells: the most frequent of comma, semicolon and tab, in this order. */
  private headings(): void {
    const counts = DELIMITERS.map((byte) => this.head.filter((each) => each === byte).length);
    const most = Math.max(...counts);
    this.delimiter = DELIMITERS[counts.indexOf(most)] as number;
    this.width = most + 1;
    if (most === 0) throw new UnreadableExtract(ONE_COLUMN);
  }
}

const ONE_COLUMN =
  "its first line has one heading alone. The first line must have the headings, with commas, semicolons or tabs between them.";

const DELIMITERS = [0x2c, 0x3b, 0x09];
