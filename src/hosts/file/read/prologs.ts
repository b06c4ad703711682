import type { PackageParts } from "./package-parts";
import { refusePart } from "./unreadable";
import { refuseDoctype } from "./xml-reader";
import { encodingOf } from "./xml-text";

/**
 * Refuses a document type in any part that is XML, those that nothing here reads included. It can only stand before the
 * root element, so no more than the start of a part is inflated.
 */
export async function refuseDoctypes(parts: PackageParts): Promise<void> {
  for (const [key, { name }] of parts.entries) {
    if (!/\.(xml|rels|vml)$/.test(key)) continue;
    const start = new Uint8Array(LONGEST_PROLOG);
    let length = 0;
    await parts.peek(key, (piece) => {
      const taken = piece.subarray(0, LONGEST_PROLOG - length);
      start.set(taken, length);
      length += taken.length;
      return !isDecided(start.subarray(0, length), name);
    });
  }
}

const LONGEST_PROLOG = 65_536;

/** Whether the root element has begun; refuses when something else is declared first. */
function isDecided(start: Uint8Array, part: string): boolean {
  if (start.length < 4) return false;
  const text = new TextDecoder(encodingOf(start)).decode(start);
  const rest = text.slice(/^(?:\s+|<\?(?:(?!\?>)[^])*\?>|<!--(?:(?!-->)[^])*-->)*/.exec(text)?.[0].length ?? 0);
  if (/^<!(DOCTYPE|ENTITY)/i.test(rest)) refuseDoctype(part);
  if (start.length === LONGEST_PROLOG && !/^<[^!?]/.test(rest)) refusePart(part, "does not come to its content");
  return /^(<[^!?]|[^<])/.test(rest);
}
