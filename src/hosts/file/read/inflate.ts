import { Inflate as FflateInflate } from "fflate";

/**
 * Inflates raw deflate data and hands the bytes over piece by piece, in order. A piece is only lent: it may be used
 * again once `take` returns. When `take` throws, the work stops and the promise rejects. Rejects on data that is not
 * deflate or ends too early.
 */
export interface Inflate {
  (deflated: Uint8Array, take: (piece: Uint8Array) => void): Promise<void>;
  /** CRC-32 carried on from piece to piece, where the host has a faster one than ours. */
  readonly checksum?: (piece: Uint8Array, before: number) => number;
}

/** The browser's own where there is one (it works off the main thread), else fflate. */
export const usualInflate: Inflate = (deflated, take) =>
  canDecompress() ? streamInflate(deflated, take) : fflateInflate(deflated, take);

export const fflateInflate: Inflate = async (deflated, take) => {
  const inflater = new FflateInflate((piece) => take(piece));
  // fflate gives all that a push yields in one piece: small pushes keep a zip bomb small.
  for (let at = 0; ; at += PUSH_BYTES) {
    const isLast = at + PUSH_BYTES >= deflated.length;
    inflater.push(deflated.subarray(at, at + PUSH_BYTES), isLast);
    if (isLast) return;
  }
};

export const streamInflate: Inflate = async (deflated, take) => {
  const source = new Blob([deflated as Uint8Array<ArrayBuffer>]).stream();
  const reader = source.pipeThrough(new DecompressionStream("deflate-raw")).getReader();
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) take(next.value);
  } finally {
    await reader.cancel().catch(() => undefined);
  }
};

const PUSH_BYTES = 16_384;

/** Older engines have the stream but not raw deflate, and say so only when it is made. */
function canDecompress(): boolean {
  try {
    return typeof DecompressionStream === "function" && Boolean(new DecompressionStream("deflate-raw"));
  } catch {
    return false;
  }
}
