import { createInflateRaw } from "node:zlib";
import type { Inflate } from "./read/inflate";

/** Inflation by Node's zlib, which runs beside the reading on a thread of its own. */
export const nodeInflate: Inflate = async (deflated, take) => {
  const stream = createInflateRaw({ chunkSize: PIECE_BYTES });
  stream.end(deflated);
  for await (const piece of stream) take(piece as Uint8Array);
};

const PIECE_BYTES = 131_072;
