import { type Limits, RATIO_FREE_BYTES } from "./limits";
import { printable, refuse } from "./unreadable";
import { CUT_SHORT, uint64, zipEnd } from "./zip-end";

/** One part of a zip file, as its central directory declares it. */
export interface ZipEntry {
  /** As in the file, for messages only. */
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly deflatedBytes: number;
  readonly inflatedBytes: number;
  readonly headerAt: number;
  readonly dataAt: number;
}

/**
 * The parts of a zip file by `partKey`. Only the central directory is believed; each local header must agree with it,
 * and no two parts may share bytes (the trick of overlapping zip bombs).
 * Source: PKWARE APPNOTE 6.3.10, 4.3.7, 4.3.12 and 4.5.3; overlaps: Fifield (2019), USENIX WOOT, "A better zip bomb".
 */
export function zipDirectory(bytes: Uint8Array, limits: Limits): Map<string, ZipEntry> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = zipEnd(view);
  if (end.entries > limits.entries) {
    refuse(`The file has ${end.entries} parts, more than the ${limits.entries} that are read: save it again in Excel.`);
  }
  const entries = new Map<string, ZipEntry>();
  const last = end.directoryStart + end.directoryBytes;
  for (let at = end.directoryStart, index = 0; index < end.entries; index += 1) {
    if (at + HEADER_BYTES > last || view.getUint32(at, true) !== 0x02014b50) refuse(CUT_SHORT);
    const next = at + HEADER_BYTES + view.getUint16(at + 28, true) + view.getUint16(at + 30, true);
    const after = next + view.getUint16(at + 32, true);
    if (after > last) refuse(CUT_SHORT);
    keep(entries, entryAt(bytes, view, at, next));
    at = after;
  }
  checkPlaces([...entries.values()], end.directoryStart);
  checkSizes([...entries.values()], limits);
  return entries;
}

/** Names of parts differ by more than case, and some writers use the wrong slash. Source: ECMA-376 Part 2, 6.2.2. */
export function partKey(name: string): string {
  return name.replace(/\\/g, "/").replace(/^\/+/, "").toLowerCase();
}

const HEADER_BYTES = 46;
const LOCAL_BYTES = 30;
const ENCRYPTED = 0x2041;

function keep(entries: Map<string, ZipEntry>, entry: ZipEntry): void {
  const key = partKey(entry.name);
  if (entries.has(key)) {
    refuse(`The file has two parts named ${printable(entry.name)}: open it in Excel and save it again as .xlsx.`);
  }
  entries.set(key, entry);
}

function entryAt(bytes: Uint8Array, view: DataView, at: number, end: number): ZipEntry {
  const name = bytes.subarray(at + HEADER_BYTES, at + HEADER_BYTES + view.getUint16(at + 28, true));
  if ((view.getUint16(at + 8, true) & ENCRYPTED) !== 0) {
    refuse("The file is a zip file with a password: save the workbook in Excel as .xlsx without a password.");
  }
  const extra = at + HEADER_BYTES + name.length;
  const [inflatedBytes, deflatedBytes, headerAt] = places(view, at, extra, end);
  const method = view.getUint16(at + 10, true);
  return {
    name: new TextDecoder().decode(name),
    method,
    crc: view.getUint32(at + 16, true),
    deflatedBytes,
    inflatedBytes,
    headerAt,
    dataAt: dataAt(bytes, view, headerAt, name, method),
  };
}

/** Sizes and place; those of 0xFFFFFFFF stand in the zip64 field instead, in this order. */
function places(view: DataView, at: number, extra: number, end: number): [number, number, number] {
  const short: [number, number, number] = [
    view.getUint32(at + 24, true),
    view.getUint32(at + 20, true),
    view.getUint32(at + 42, true),
  ];
  let from = zip64Field(view, extra, end);
  return short.map((value) => {
    if (value !== 0xffffffff || from === null) return value;
    if (from + 8 > end) return refuse(CUT_SHORT);
    const long = uint64(view, from);
    from += 8;
    return long;
  }) as [number, number, number];
}

function zip64Field(view: DataView, extra: number, end: number): number | null {
  for (let at = extra; at + 4 <= end; at += 4 + view.getUint16(at + 2, true)) {
    if (view.getUint16(at, true) === 1) return at + 4;
  }
  return null;
}

function dataAt(bytes: Uint8Array, view: DataView, headerAt: number, name: Uint8Array, method: number): number {
  if (headerAt + LOCAL_BYTES + name.length > bytes.length) refuse(CUT_SHORT);
  const agrees =
    view.getUint32(headerAt, true) === 0x04034b50 &&
    view.getUint16(headerAt + 8, true) === method &&
    view.getUint16(headerAt + 26, true) === name.length &&
    name.every((byte, index) => byte === bytes[headerAt + LOCAL_BYTES + index]);
  if (!agrees)
    refuse("The file contradicts itself about what it contains: open it in Excel and save it again as .xlsx.");
  return headerAt + LOCAL_BYTES + name.length + view.getUint16(headerAt + 28, true);
}

function checkPlaces(entries: ZipEntry[], directoryStart: number): void {
  entries.sort((a, b) => a.headerAt - b.headerAt);
  entries.forEach((entry, index) => {
    const limit = entries[index + 1]?.headerAt ?? directoryStart;
    if (!(entry.dataAt + entry.deflatedBytes <= limit)) refuse(CUT_SHORT);
  });
}

function checkSizes(entries: readonly ZipEntry[], limits: Limits): void {
  let total = 0;
  for (const entry of entries) {
    total += entry.inflatedBytes;
    if (entry.inflatedBytes > RATIO_FREE_BYTES && entry.inflatedBytes > limits.ratio * entry.deflatedBytes) {
      refuse(
        `The part ${printable(entry.name)} of the file inflates to ${Math.round(entry.inflatedBytes / entry.deflatedBytes)} times its size, as a zip bomb does: if you trust the file, open it in Excel and save it again.`,
      );
    }
  }
  if (total > limits.inflatedBytes) {
    refuse(
      `The file inflates to more than ${Math.round(limits.inflatedBytes / 1e6)} MB, the most that is read: keep only the sheets that are needed.`,
    );
  }
}
