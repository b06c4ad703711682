import { LESS, STUCK } from "./bytes";

/**
 * Reads a decimal number that ends at a `<`, exactly as `Number` reads its text.
 *
 * Up to 15 digits make a whole number below 2^53, and 10^k is exact up to k = 22: their quotient is one correctly rounded
 * division of exact numbers, hence the double nearest to the decimal. Source: Clinger (1990), PLDI, "How to read floating
 * point numbers accurately". Everything longer, and every exponent, goes to `Number`.
 */
export class NumberScanner {
  value = 0;
  /** Whether the text was one to nine digits and nothing else. */
  isPlain = false;

  /** Puts the number into `value` and gives the place of the `<`. */
  read(bytes: Uint8Array, from: number): number {
    let at = from;
    let byte = bytes[at] as number;
    const isNegative = byte === MINUS;
    if (isNegative) byte = bytes[(at += 1)] as number;
    const start = at;
    let whole = 0;
    for (; byte >= ZERO && byte <= NINE; byte = bytes[(at += 1)] as number) whole = whole * 10 + (byte - ZERO);
    let digits = at - start;
    let decimals = 0;
    if (byte === POINT) {
      const first = (at += 1);
      for (byte = bytes[at] as number; byte >= ZERO && byte <= NINE; byte = bytes[(at += 1)] as number) {
        whole = whole * 10 + (byte - ZERO);
      }
      decimals = at - first;
      digits += decimals;
    }
    if (byte !== LESS || digits > 15 || digits === 0) return this.slow(bytes, from);
    this.isPlain = digits < 10 && at - from === digits;
    const size = decimals === 0 ? whole : whole / (POWERS[decimals] as number);
    this.value = isNegative ? -size : size;
    return at;
  }

  private slow(bytes: Uint8Array, from: number): number {
    let text = "";
    let at = from;
    for (let byte = bytes[at] as number; byte !== LESS; byte = bytes[(at += 1)] as number) {
      if (byte === 0 || at - from > LONGEST) return STUCK;
      text += String.fromCharCode(byte);
    }
    if (!/^[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?$/.test(text)) return STUCK;
    this.isPlain = false;
    this.value = Number(text);
    return Number.isFinite(this.value) ? at : STUCK;
  }
}

const MINUS = 45;
const POINT = 46;
const ZERO = 48;
const NINE = 57;
const LONGEST = 400;
const POWERS = Float64Array.from({ length: 16 }, (_, power) => Number(`1e${power}`));
