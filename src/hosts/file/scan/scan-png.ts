import { strFromU8 } from "fflate";
import { ReleaseRefused } from "./refused";

/** Chunks of an image without words, and the one word that says which program drew it. Source: PNG (W3C, third edition), 11. */
const PLAIN: ReadonlySet<string> = new Set(["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "sRGB", "gAMA", "pHYs"]);
export const SOFTWARE = "Software\0Windowline";

/** @throws {ReleaseRefused} where an image carries text, a time, or bytes behind its end */
export function scanPng(name: string, bytes: Uint8Array): void {
  const chunks = chunksOf(name, bytes);
  for (const { type, data } of chunks) {
    if (PLAIN.has(type) || (type === "tEXt" && strFromU8(data, true) === SOFTWARE)) continue;
    throw new ReleaseRefused(name, `more than an image (its chunk ${type})`);
  }
  if (chunks.at(-1)?.type !== "IEND") throw new ReleaseRefused(name, "an image without an end");
}

export interface PngChunk {
  readonly type: string;
  readonly data: Uint8Array;
  /** Where it begins. */
  readonly at: number;
}

export function chunksOf(name: string, bytes: Uint8Array): PngChunk[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks: PngChunk[] = [];
  if (strFromU8(bytes.subarray(1, 4), true) !== "PNG") throw new ReleaseRefused(name, "what is not PNG");
  for (let at = 8; at < bytes.length;) {
    const length = at + 12 <= bytes.length ? view.getUint32(at) : Infinity;
    if (at + 12 + length > bytes.length) throw new ReleaseRefused(name, "something behind the image");
    const type = strFromU8(bytes.subarray(at + 4, at + 8), true);
    chunks.push({ type, data: bytes.subarray(at + 8, at + 8 + length), at });
    at += 12 + length;
  }
  return chunks;
}
