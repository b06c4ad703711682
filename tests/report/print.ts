import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { inflateSync } from "node:zlib";

/** What a printed page shows, read back from the PDF. */
export interface PrintedPageSeen {
  readonly words: readonly Word[];
  readonly heightPoints: number;
}

export interface Word {
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The pages with the boxes of their words, as poppler finds them. */
export function pagesOf(pdf: string): PrintedPageSeen[] {
  const html = execFileSync("pdftotext", ["-bbox", pdf, "-"], { maxBuffer: 64 * 1024 * 1024 }).toString();
  return html
    .split("<page ")
    .slice(1)
    .map((page) => ({
      heightPoints: Number(/height="([\d.]+)"/.exec(page)?.[1]),
      words: [
        ...page.matchAll(/<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)<\/word>/g),
      ].map(([, left, top, right, bottom, text]) => ({
        text: String(text),
        ...{ left: Number(left), top: Number(top), right: Number(right), bottom: Number(bottom) },
      })),
    }));
}

/** Sizes of print: every "Tf" of the content streams (ISO 32000-1, 9.3.1). */
export function printSizes(pdf: string): number[] {
  const bytes = readFileSync(pdf);
  const sizes: number[] = [];
  for (let at = bytes.indexOf("stream"); at >= 0; at = bytes.indexOf("stream", at + 6)) {
    if (bytes.subarray(at - 3, at).toString() === "end") continue;
    const start = at + (bytes[at + 6] === 13 ? 8 : 7);
    const content = inflated(bytes.subarray(start, bytes.indexOf("endstream", start)));
    for (const [, size] of content.matchAll(/\/F\d+ ([\d.]+) Tf/g)) sizes.push(Number(size));
  }
  return sizes;
}

function inflated(bytes: Buffer): string {
  try {
    return inflateSync(bytes).toString("latin1");
  } catch {
    return "";
  }
}

/** Pairs of words of which one covers more than a quarter of the other: text that runs out of its cell does. */
export function coveredWords({ words }: PrintedPageSeen): string[] {
  const covered: string[] = [];
  words.forEach((a, at) => {
    for (const b of words.slice(at + 1)) {
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (across <= 0 || down <= 0) continue;
      const least = Math.min(areaOf(a), areaOf(b));
      if (across * down > 0.25 * least) covered.push(`${a.text} / ${b.text}`);
    }
  });
  return covered;
}

function areaOf({ left, right, top, bottom }: Word): number {
  return (right - left) * (bottom - top);
}

/** How far down the page its words and charts reach, of the room above the footer. */
export function filledShare({ words, heightPoints }: PrintedPageSeen): number {
  const foot = heightPoints - FOOT_POINTS;
  const lowest = Math.max(0, ...words.map(({ bottom }) => bottom).filter((bottom) => bottom < foot));
  return lowest / foot;
}

const FOOT_POINTS = 45;
