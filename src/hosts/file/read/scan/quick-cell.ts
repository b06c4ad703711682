import type { SheetCells } from "../sheet-cells";
import { EQUALS, LESS, MORE, QUOTE, SLASH, SPACE, STUCK } from "./bytes";
import { NumberScanner } from "./scan-number";

/**
 * Reads the one form that makes up nearly all of a large sheet: `<c r="B7" s="1" t="s"><v>12</v></c>`, style and type
 * left out or not, the type a number or a shared text. `STUCK`, with nothing done, on any other.
 */
export class QuickCell {
  private readonly number = new NumberScanner();
  private row = 0;
  private column = 0;
  private style = 0;
  private isShared = false;

  constructor(private readonly cells: SheetCells) {}

  /** From just after `<c`; gives the place after the cell. */
  read(bytes: Uint8Array, from: number): number {
    const address = this.address(bytes, from);
    const open = address === STUCK ? STUCK : this.styleAndType(bytes, address);
    if (open === STUCK || !(bytes[open] === LESS && bytes[open + 1] === V && bytes[open + 2] === MORE)) return STUCK;
    const at = this.number.read(bytes, open + 3);
    if (at === STUCK || !endsCell(bytes, at)) return STUCK;
    const { value } = this.number;
    if (this.isShared && !this.number.isPlain) return STUCK;
    this.cells.startCellAt(this.row, this.column);
    if (this.isShared) this.cells.putShared(value);
    else this.cells.putNumber(value, this.style);
    return at + CELL_END_BYTES;
  }

  /** ` r="B7"`; gives the place after it. */
  private address(bytes: Uint8Array, from: number): number {
    if (!startsAttribute(bytes, from, R)) return STUCK;
    let at = from + 4;
    let column = 0;
    let byte = bytes[at] as number;
    for (; byte >= 65 && byte <= 90; byte = bytes[(at += 1)] as number) column = column * 26 + byte - 64;
    const letters = at - from - 4;
    let row = 0;
    if (byte === ZERO) return STUCK;
    for (; byte >= ZERO && byte <= NINE; byte = bytes[(at += 1)] as number) row = row * 10 + byte - ZERO;
    const digits = at - from - 4 - letters;
    if (byte !== QUOTE || letters === 0 || letters > 3 || digits === 0 || digits > 7) return STUCK;
    this.row = row - 1;
    this.column = column - 1;
    return at + 1;
  }

  /** ` s="1" t="s">`, either or both left out; gives the place after it. */
  private styleAndType(bytes: Uint8Array, from: number): number {
    let at = from;
    this.style = 0;
    if (startsAttribute(bytes, at, S)) {
      const start = (at += 4);
      let style = 0;
      let byte = bytes[at] as number;
      for (; byte >= ZERO && byte <= NINE; byte = bytes[(at += 1)] as number) style = style * 10 + byte - ZERO;
      if (byte !== QUOTE || at === start || at - start > 6) return STUCK;
      this.style = style;
      at += 1;
    }
    this.isShared = startsAttribute(bytes, at, T) && bytes[at + 4] === S && bytes[at + 5] === QUOTE;
    if (this.isShared) at += 6;
    return bytes[at] === MORE ? at + 1 : STUCK;
  }
}

function startsAttribute(bytes: Uint8Array, at: number, name: number): boolean {
  return bytes[at] === SPACE && bytes[at + 1] === name && bytes[at + 2] === EQUALS && bytes[at + 3] === QUOTE;
}

/** `</v></c>`; the bytes between are read one by one because this is asked of every cell. */
function endsCell(bytes: Uint8Array, at: number): boolean {
  const endsValue = bytes[at] === LESS && bytes[at + 1] === SLASH && bytes[at + 2] === V && bytes[at + 3] === MORE;
  return (
    endsValue && bytes[at + 4] === LESS && bytes[at + 5] === SLASH && bytes[at + 6] === C && bytes[at + 7] === MORE
  );
}

const CELL_END_BYTES = 8;
const C = 99;
const R = 114;
const S = 115;
const T = 116;
const V = 118;
const ZERO = 48;
const NINE = 57;
