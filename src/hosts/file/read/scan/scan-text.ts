import { AMPERSAND, LESS, MORE, RETURN, STUCK } from "./bytes";

/**
 * Reads character data up to the next `<` from bytes: what the fallback parser would give for it, or `STUCK` where that
 * takes the fallback parser to say. Source: Extensible Markup Language (XML) 1.0, 2.2, 2.4, 2.11, 4.1 and 4.6.
 */
export class TextScanner {
  text = "";
  private readonly decoder = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });

  /** Puts the text into `text` and gives the place of the `<`. */
  read(bytes: Uint8Array, from: number): number {
    let at = from;
    let seen = PLAIN;
    for (let byte = bytes[at] as number; byte !== LESS; byte = bytes[(at += 1)] as number) {
      const kind = KINDS[byte] as number;
      if (kind !== PLAIN) {
        if (kind === ILLEGAL) return STUCK;
        seen |= kind;
      }
    }
    if (seen === PLAIN && at - from <= SHORT) this.text = ascii(bytes, from, at);
    else if (!this.decode(bytes, from, at, seen)) return STUCK;
    return at;
  }

  private decode(bytes: Uint8Array, from: number, to: number, seen: number): boolean {
    const decoded = this.decoded(bytes.subarray(from, to));
    if (decoded === null) return false;
    if ((seen & WIDE) !== 0 && /[\uFFFE\uFFFF]/.test(decoded)) return false;
    if ((seen & CLOSING) !== 0 && decoded.includes("]]>")) return false;
    const lines = (seen & RETURNS) !== 0 ? decoded.replace(/\r\n?/g, "\n") : decoded;
    const text = (seen & REFERENCE) !== 0 ? dereferenced(lines) : lines;
    if (text !== null) this.text = text;
    return text !== null;
  }

  private decoded(bytes: Uint8Array): string | null {
    try {
      return this.decoder.decode(bytes);
    } catch {
      return null;
    }
  }
}

/** `&amp;` and its kind; null where a reference is none of those that XML itself defines. */
export function dereferenced(text: string): string | null {
  let isKnown = true;
  const replaced = text.replace(/&([^;&]{0,12}(;?))/g, (_, reference: string) => {
    const meant = meaning(reference);
    isKnown &&= meant !== null;
    return meant ?? "";
  });
  return isKnown ? replaced : null;
}

function meaning(reference: string): string | null {
  const named = NAMED.get(reference);
  if (named !== undefined) return named;
  const match = /^#(?:([0-9]{1,8})|x([0-9A-Fa-f]{1,8}));$/.exec(reference);
  if (match === null) return null;
  const code = match[1] === undefined ? parseInt(match[2] as string, 16) : Number(match[1]);
  const isLegal =
    (code >= 0x20 && code <= 0xd7ff) ||
    (code >= 0xe000 && code <= 0xfffd) ||
    (code >= 0x10000 && code <= 0x10ffff) ||
    [0x9, 0xa, 0xd].includes(code);
  return isLegal ? String.fromCodePoint(code) : null;
}

const NAMED = new Map([
  ["amp;", "&"],
  ["lt;", "<"],
  ["gt;", ">"],
  ["quot;", '"'],
  ["apos;", "'"],
]);

/** Up to this length a string is put together faster than decoded. */
const SHORT = 24;

function ascii(bytes: Uint8Array, from: number, to: number): string {
  let text = "";
  for (let at = from; at < to; at += 1) text += String.fromCharCode(bytes[at] as number);
  return text;
}

const PLAIN = 0;
const WIDE = 1;
const REFERENCE = 2;
const RETURNS = 4;
const CLOSING = 8;
const ILLEGAL = 16;

const KINDS = Uint8Array.from({ length: 256 }, (_, byte) => {
  if (byte >= 0x80) return WIDE;
  if (byte === AMPERSAND) return REFERENCE;
  if (byte === RETURN) return RETURNS;
  if (byte === MORE) return CLOSING;
  return byte >= 0x20 || byte === 9 || byte === 10 ? PLAIN : ILLEGAL;
});
