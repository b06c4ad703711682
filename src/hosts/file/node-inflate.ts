import zlib from "node:zlib";
import { crc32 } from "./read/crc32";
import type { Inflate } from "./read/inflate";

const PIECE_BYTES = 131_072;

/** Inflation by Node's zlib, which runs beside the reading on a thread of its own. */
export const nodeInflate: Inflate = Object.assign(inflate, { checksum: fasterChecksum() });

async function inflate(deflated: Uint8Array, take: (piece: Uint8Array) => void): Promise<void> {
  const stream = zlib.createInflateRaw({ chunkSize: PIECE_BYTES });
  stream.end(deflated);
  for await (const piece of stream) take(piece as Uint8Array);
}

/** Node has its own from 20.15 on. */
function fasterChecksum(): NonNullable<Inflate["checksum"]> {
  return typeof zlib.crc32 === "function" ? zlib.crc32 : crc32;
}
