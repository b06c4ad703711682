/**
 * The checksum of zip files, carried on from piece to piece (start with 0), eight bytes at a step.
 * Source: PKWARE APPNOTE 6.3.10, 4.4.7 (reflected polynomial 0xEDB88320); tables after Kounavis and Berry (2008), IEEE
 * Trans Comput 57:1550-1560, "slicing-by-8".
 */
export function crc32(bytes: Uint8Array, before: number): number {
  let crc = ~before;
  let at = 0;
  for (const wholeSteps = bytes.length - (bytes.length % 8); at < wholeSteps; at += 8) {
    crc ^= byte(bytes, at) | (byte(bytes, at + 1) << 8) | (byte(bytes, at + 2) << 16) | (byte(bytes, at + 3) << 24);
    crc =
      entry(0x700 | (crc & 255)) ^
      entry(0x600 | ((crc >>> 8) & 255)) ^
      entry(0x500 | ((crc >>> 16) & 255)) ^
      entry(0x400 | (crc >>> 24)) ^
      entry(0x300 | byte(bytes, at + 4)) ^
      entry(0x200 | byte(bytes, at + 5)) ^
      entry(0x100 | byte(bytes, at + 6)) ^
      entry(byte(bytes, at + 7));
  }
  for (; at < bytes.length; at += 1) crc = (crc >>> 8) ^ entry((crc ^ byte(bytes, at)) & 255);
  return ~crc >>> 0;
}

function byte(bytes: Uint8Array, at: number): number {
  return bytes[at] as number;
}

function entry(at: number): number {
  return TABLES[at] as number;
}

const TABLES = tables();

/** Table k is the checksum of a byte followed by k zero bytes. */
function tables(): Int32Array {
  const made = new Int32Array(8 * 256);
  for (let value = 0; value < 256; value += 1) {
    let crc = value;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
    made[value] = crc;
  }
  for (let at = 256; at < made.length; at += 1) {
    const shorter = made[at - 256] as number;
    made[at] = (shorter >>> 8) ^ (made[shorter & 255] as number);
  }
  return made;
}
