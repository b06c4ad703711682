/**
 * Zip files byte by byte, for what no zip library writes. Source: PKWARE APPNOTE 6.3.10, 4.3.7 (local header), 4.3.9
 * (data descriptor), 4.3.12 (central directory), 4.3.14 to 4.3.16 (ends), 4.5.3 (zip64 field).
 */
import { deflateRawSync } from "node:zlib";

export interface Part {
  readonly name: string;
  readonly text: string | Uint8Array;
  readonly stored?: boolean;
  readonly descriptor?: boolean;
  readonly zip64?: boolean;
  /** Instead of what is true. */
  readonly crc?: number;
  readonly size?: number;
  readonly flags?: number;
  readonly method?: number;
  readonly localName?: string;
}

export function zipOf(
  parts: readonly Part[],
  { zip64 = false, comment = "", listedBackwards = false } = {},
): Uint8Array {
  const written = new Writer();
  const places = parts.map((part) => {
    const at = written.length;
    writeLocal(written, part);
    return at;
  });
  const start = written.length;
  const listed = [...parts.keys()];
  for (const index of listedBackwards ? listed.reverse() : listed)
    writeCentral(written, parts[index] as Part, places[index] as number);
  writeEnd(written, parts.length, start, written.length - start, zip64, comment);
  return Uint8Array.from(written.bytes);
}

function writeLocal(out: Writer, part: Part): void {
  const { data, crc, size } = packed(part);
  const later = part.descriptor === true;
  out.u32(0x04034b50).u16(20).u16(flagsOf(part)).u16(methodOf(part)).u32(0);
  out
    .u32(later ? 0 : crc)
    .u32(later ? 0 : data.length)
    .u32(later ? 0 : size);
  const name = Buffer.from(part.localName ?? part.name);
  out.u16(name.length).u16(0).put(name).put(data);
  if (later) out.u32(0x08074b50).u32(crc).u32(data.length).u32(size);
}

function writeCentral(out: Writer, part: Part, place: number): void {
  const { data, crc, size } = packed(part);
  const name = Buffer.from(part.name);
  const long = part.zip64 === true;
  out.u32(0x02014b50).u16(45).u16(20).u16(flagsOf(part)).u16(methodOf(part)).u32(0).u32(crc);
  out.u32(long ? 0xffffffff : data.length).u32(long ? 0xffffffff : size);
  out
    .u16(name.length)
    .u16(long ? 32 : 0)
    .u16(0)
    .u16(0)
    .u16(0)
    .u32(0)
    .u32(long ? 0xffffffff : place)
    .put(name);
  // Another field first: a reader must look for the one it needs.
  if (long) out.u16(0x9999).u16(0).u16(1).u16(24).u64(size).u64(data.length).u64(place);
}

function writeEnd(out: Writer, count: number, start: number, length: number, zip64: boolean, comment: string): void {
  const at = out.length;
  if (zip64) {
    out.u32(0x06064b50).u64(44).u16(45).u16(45).u32(0).u32(0).u64(count).u64(count).u64(length).u64(start);
    out.u32(0x07064b50).u32(0).u64(at).u32(1);
  }
  const short = zip64 ? 0xffff : count;
  out.u32(0x06054b50).u16(0).u16(0).u16(short).u16(short);
  out
    .u32(zip64 ? 0xffffffff : length)
    .u32(zip64 ? 0xffffffff : start)
    .u16(comment.length)
    .put(Buffer.from(comment));
}

function packed(part: Part): { data: Uint8Array; crc: number; size: number } {
  const bytes = Buffer.from(part.text);
  const data = part.stored === true ? bytes : deflateRawSync(bytes);
  return { data, crc: part.crc ?? crcBitByBit(bytes), size: part.size ?? bytes.length };
}

function methodOf(part: Part): number {
  return part.method ?? (part.stored === true ? 0 : 8);
}

function flagsOf(part: Part): number {
  return part.flags ?? (part.descriptor === true ? 8 : 0);
}

/** The definition, one bit at a time. */
export function crcBitByBit(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return ~crc >>> 0;
}

class Writer {
  readonly bytes: number[] = [];

  get length(): number {
    return this.bytes.length;
  }

  put(bytes: Uint8Array): this {
    for (const byte of bytes) this.bytes.push(byte);
    return this;
  }

  u16(value: number): this {
    this.bytes.push(value & 255, (value >>> 8) & 255);
    return this;
  }

  u32(value: number): this {
    return this.u16(value & 0xffff).u16(Math.floor(value / 0x10000) & 0xffff);
  }

  u64(value: number): this {
    return this.u32(value % 0x100000000).u32(Math.floor(value / 0x100000000));
  }
}
