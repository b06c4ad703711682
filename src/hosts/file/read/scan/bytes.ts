/** Bytes that XML is made of. */
export const TAB = 9;
export const LINE_FEED = 10;
export const RETURN = 13;
export const SPACE = 32;
export const QUOTE = 34;
export const AMPERSAND = 38;
export const APOSTROPHE = 39;
export const SLASH = 47;
export const LESS = 60;
export const EQUALS = 61;
export const MORE = 62;

/** What a scanner gives instead of a place: more bytes are needed, or the fallback parser. */
export const STUCK = -1;

/** Every buffer that is scanned ends in this many zero bytes, which no rule accepts: so no rule checks for the end. */
export const ENDING_ZEROS = 32;

export function isSpace(byte: number | undefined): boolean {
  return byte === SPACE || byte === LINE_FEED || byte === RETURN || byte === TAB;
}

export function skipSpace(bytes: Uint8Array, at: number): number {
  let place = at;
  while (isSpace(bytes[place])) place += 1;
  return place;
}

export function literal(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** Whether `expected` (at most `ENDING_ZEROS` bytes) stands at a place. */
export function startsAt(bytes: Uint8Array, at: number, expected: Uint8Array): boolean {
  for (let index = 0; index < expected.length; index += 1) {
    if (bytes[at + index] !== expected[index]) return false;
  }
  return true;
}
