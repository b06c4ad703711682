import { refuse } from "./unreadable";

/** Where the central directory of a zip file lies. */
export interface ZipEnd {
  readonly entries: number;
  readonly directoryStart: number;
  readonly directoryBytes: number;
}

/** Source: PKWARE APPNOTE 6.3.10, 4.3.14 to 4.3.16 (the records at the end, with and without zip64). */
export function zipEnd(view: DataView): ZipEnd {
  const at = endRecordAt(view);
  const onThisDisk = view.getUint16(at + 8, true);
  const end: ZipEnd = {
    entries: view.getUint16(at + 10, true),
    directoryBytes: view.getUint32(at + 12, true),
    directoryStart: view.getUint32(at + 16, true),
  };
  const needs64 = end.entries === 0xffff || end.directoryBytes === 0xffffffff || end.directoryStart === 0xffffffff;
  const found = needs64 ? (zip64End(view, at) ?? end) : end;
  if (!needs64 && onThisDisk !== end.entries) refuse(SPLIT);
  if (found.directoryStart + found.directoryBytes > at) refuse(CUT_SHORT);
  return found;
}

/** A 64-bit number; anything that cannot be a place in a file becomes Infinity. */
export function uint64(view: DataView, at: number): number {
  const high = view.getUint32(at + 4, true);
  return high < 0x200000 ? high * 0x100000000 + view.getUint32(at, true) : Infinity;
}

export const CUT_SHORT =
  "The file is cut short or damaged: its list of contents is not whole. Take a fresh copy of the file and try again.";
const SPLIT =
  "The file is one piece of a zip file in several pieces: save the workbook again in Excel as one .xlsx file.";

const END_BYTES = 22;
const LONGEST_COMMENT = 0xffff;

function endRecordAt(view: DataView): number {
  const first = Math.max(0, view.byteLength - END_BYTES - LONGEST_COMMENT);
  for (let at = view.byteLength - END_BYTES; at >= first; at -= 1) {
    if (view.getUint32(at, true) !== 0x06054b50) continue;
    if (at + END_BYTES + view.getUint16(at + 20, true) <= view.byteLength) return at;
  }
  return refuse(CUT_SHORT);
}

function zip64End(view: DataView, endAt: number): ZipEnd | null {
  const locator = endAt - 20;
  if (locator < 0 || view.getUint32(locator, true) !== 0x07064b50) return null;
  const at = uint64(view, locator + 8);
  if (at + 56 > locator || view.getUint32(at, true) !== 0x06064b50) return refuse(CUT_SHORT);
  if (uint64(view, at + 24) !== uint64(view, at + 32)) return refuse(SPLIT);
  return {
    entries: uint64(view, at + 32),
    directoryBytes: uint64(view, at + 40),
    directoryStart: uint64(view, at + 48),
  };
}
