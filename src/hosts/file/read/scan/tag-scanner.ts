import { AMPERSAND, APOSTROPHE, EQUALS, isSpace, LESS, MORE, QUOTE, SLASH, skipSpace, STUCK } from "./bytes";

/** Where an attribute's value lies in the bytes, both ends without the quotes; `from` 0 where the tag has none. */
export interface Span {
  from: number;
  to: number;
}

/**
 * Reads the attributes of a start tag whose names are one letter, and steps over all others. `STUCK` on anything that
 * needs the fallback parser: references, declarations of namespaces, characters beyond ASCII, the same letter twice.
 */
export class TagScanner {
  readonly r: Span = { from: 0, to: 0 };
  readonly s: Span = { from: 0, to: 0 };
  readonly t: Span = { from: 0, to: 0 };

  /** From just after the name of the element; gives the place of the `>` or of the `/` before it. */
  read(bytes: Uint8Array, from: number): number {
    this.r.from = this.s.from = this.t.from = 0;
    let at = from;
    for (;;) {
      const byte = bytes[at];
      if (byte === MORE) return at;
      if (byte === SLASH) return bytes[at + 1] === MORE ? at : STUCK;
      if (!isSpace(byte)) return STUCK;
      at = skipSpace(bytes, at + 1);
      if (bytes[at] === MORE || bytes[at] === SLASH) continue;
      at = this.attribute(bytes, at);
      if (at === STUCK) return STUCK;
    }
  }

  private attribute(bytes: Uint8Array, start: number): number {
    let at = start;
    if (NAME[bytes[at] as number] !== STARTS_NAME) return STUCK;
    while (NAME[bytes[at] as number] !== 0) at += 1;
    const nameEnd = at;
    if (bytes[at] !== EQUALS) return STUCK;
    const quote = bytes[at + 1];
    if (quote !== QUOTE && quote !== APOSTROPHE) return STUCK;
    const from = (at += 2);
    for (let byte = bytes[at]; byte !== quote; byte = bytes[(at += 1)]) if (VALUE[byte as number] === 0) return STUCK;
    return this.keep(bytes, start, nameEnd, from, at) ? at + 1 : STUCK;
  }

  private keep(bytes: Uint8Array, start: number, nameEnd: number, from: number, to: number): boolean {
    if (nameEnd - start > 1) return !declaresNamespace(bytes, start);
    const span = this.spanOf(bytes[start] as number);
    if (span === null) return true;
    if (span.from !== 0) return false;
    span.from = from;
    span.to = to;
    return true;
  }

  private spanOf(letter: number): Span | null {
    if (letter === 114) return this.r;
    if (letter === 115) return this.s;
    return letter === 116 ? this.t : null;
  }
}

function declaresNamespace(bytes: Uint8Array, start: number): boolean {
  return XMLNS.every((byte, index) => bytes[start + index] === byte);
}

const XMLNS = [..."xmlns"].map((letter) => letter.charCodeAt(0));

const STARTS_NAME = 2;

/** Bytes of a name that needs no further thought: letters and `_`, and after the first digits and `: - .` */
const NAME = Uint8Array.from({ length: 256 }, (_, byte) => {
  const letter = String.fromCharCode(byte);
  return /[A-Za-z_]/.test(letter) ? STARTS_NAME : Number(/[0-9:.-]/.test(letter));
});

/** Bytes that stand for themselves in the value of an attribute; a quote of the other kind may be among them. */
const VALUE = Uint8Array.from({ length: 256 }, (_, byte) =>
  Number(byte >= 0x20 && byte < 0x7f && byte !== LESS && byte !== AMPERSAND),
);

/** A whole number from 1 to 9,999,999 without leading zeros, else `STUCK`. */
export function positive(bytes: Uint8Array, from: number, to: number): number {
  if (to <= from || to - from > 7 || bytes[from] === 48) return STUCK;
  return digits(bytes, from, to);
}

/** A whole number of one to nine digits, else `STUCK`. */
export function digits(bytes: Uint8Array, from: number, to: number): number {
  if (to <= from || to - from > 9) return STUCK;
  let number = 0;
  for (let at = from; at < to; at += 1) {
    const digit = (bytes[at] as number) - 48;
    if (digit < 0 || digit > 9) return STUCK;
    number = number * 10 + digit;
  }
  return number;
}
