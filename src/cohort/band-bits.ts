import { RESULT } from "../records/records";
import type { Looks } from "./looks";
import { CHRONOLOGICAL, CORRECTED, type StretchReader } from "./stretches";

/** Bands of one word: the low half of its bits says seen, the high half met. */
const BANDS_PER_WORD = 16;
/** What a look with each result sets in the lowest band. */
const BITS_OF_RESULT = Int32Array.from([RESULT.notMet, RESULT.emerging, RESULT.met, RESULT.lost], (result) =>
  result === RESULT.met ? 1 | (1 << BANDS_PER_WORD) : 1,
);
const BITS_PER_BYTE = 8;
/** One bit in each byte of a word. */
const EVERY_BYTE = 0x01010101;
/** A byte counts this many children before it must be emptied. */
const MOST_IN_BYTE = 255;

/**
 * Which children were seen, and met, in which bands, as bits: one word a skill for up to 16 bands. At the end of a child each
 * word is added to counters that stand four to a number, a byte each, so that no bit is asked for on its own.
 */
export class BandBits implements StretchReader {
  private readonly words: Int32Array;
  /** By basis: where the words of the band at hand start, and its place in a word. */
  private readonly wordStart = new Int32Array(2);
  private readonly shift = new Int32Array(2);
  private readonly bytes: Uint32Array;
  private readonly totals: Uint32Array;
  private waiting = 0;

  constructor(
    private readonly looks: Looks,
    private readonly basis: Uint8Array,
    private readonly bandCount: number,
  ) {
    this.words = new Int32Array(basis.length * Math.ceil(bandCount / BANDS_PER_WORD));
    this.bytes = new Uint32Array(this.words.length * BITS_PER_BYTE);
    this.totals = new Uint32Array(this.words.length * 2 * BANDS_PER_WORD);
  }

  stretch(from: number, to: number, correctedBand: number, chronologicalBand: number): void {
    const { skill, result } = this.looks;
    const { words, basis, shift, wordStart } = this;
    this.pointTo(CORRECTED, correctedBand);
    this.pointTo(CHRONOLOGICAL, chronologicalBand);
    for (let at = from; at < to; at += 1) {
      const which = skill[at] as number;
      const on = basis[which] as number;
      const bits = (BITS_OF_RESULT[result[at] as number] as number) << (shift[on] as number);
      words[which + (wordStart[on] as number)]! |= bits;
    }
  }

  endOfChild(): void {
    const { words, bytes } = this;
    for (let word = 0, at = 0; word < words.length; word += 1, at += BITS_PER_BYTE) {
      const bits = words[word] as number;
      words[word] = 0;
      bytes[at]! += bits & EVERY_BYTE;
      bytes[at + 1]! += (bits >>> 1) & EVERY_BYTE;
      bytes[at + 2]! += (bits >>> 2) & EVERY_BYTE;
      bytes[at + 3]! += (bits >>> 3) & EVERY_BYTE;
      bytes[at + 4]! += (bits >>> 4) & EVERY_BYTE;
      bytes[at + 5]! += (bits >>> 5) & EVERY_BYTE;
      bytes[at + 6]! += (bits >>> 6) & EVERY_BYTE;
      bytes[at + 7]! += (bits >>> 7) & EVERY_BYTE;
    }
    this.waiting += 1;
    if (this.waiting === MOST_IN_BYTE) this.emptyBytes();
  }

  counts(): { childrenSeen: Uint32Array; childrenMet: Uint32Array } {
    this.emptyBytes();
    return { childrenSeen: this.half(0), childrenMet: this.half(BANDS_PER_WORD) };
  }

  private pointTo(basis: number, band: number): void {
    const bit = band % BANDS_PER_WORD;
    this.wordStart[basis] = ((band - bit) / BANDS_PER_WORD) * this.basis.length;
    this.shift[basis] = bit;
  }

  private emptyBytes(): void {
    for (let at = 0; at < this.bytes.length; at += 1) {
      const bit = at % BITS_PER_BYTE;
      const total = ((at - bit) / BITS_PER_BYTE) * 2 * BANDS_PER_WORD + bit;
      for (let byte = 0; byte < 4; byte += 1) {
        this.totals[total + byte * BITS_PER_BYTE]! += ((this.bytes[at] as number) >>> (byte * BITS_PER_BYTE)) & 0xff;
      }
    }
    this.bytes.fill(0);
    this.waiting = 0;
  }

  private half(firstBit: number): Uint32Array {
    const skillCount = this.basis.length;
    return Uint32Array.from({ length: skillCount * this.bandCount }, (_, cell) => {
      const band = cell % this.bandCount;
      const skill = (cell - band) / this.bandCount;
      const bit = band % BANDS_PER_WORD;
      const word = ((band - bit) / BANDS_PER_WORD) * skillCount + skill;
      return this.totals[word * 2 * BANDS_PER_WORD + firstBit + bit] as number;
    });
  }
}
