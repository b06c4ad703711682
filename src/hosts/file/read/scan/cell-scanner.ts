import type { SheetCells } from "../sheet-cells";
import { isSpace, literal, MORE, SLASH, skipSpace, startsAt, STUCK } from "./bytes";
import { QuickCell } from "./quick-cell";
import { TextScanner } from "./scan-text";
import { digits, positive, TagScanner } from "./tag-scanner";

/** Reads one cell from bytes; puts nothing unless it has understood the whole of it. */
export class CellScanner {
  private readonly tag = new TagScanner();
  private readonly quick: QuickCell;
  private readonly text = new TextScanner();
  private row = 0;
  private column = 0;
  private style = 0;
  private type = "n";
  private hasFormula = false;
  private value: string | null = null;
  private inline: string | null = null;

  constructor(private readonly cells: SheetCells) {
    this.quick = new QuickCell(cells);
  }

  /** From just after `<c`; gives the place after the cell. */
  read(bytes: Uint8Array, from: number): number {
    const quick = this.quick.read(bytes, from);
    return quick === STUCK ? this.any(bytes, from) : quick;
  }

  private any(bytes: Uint8Array, from: number): number {
    const end = this.tag.read(bytes, from);
    if (end === STUCK || !this.place(bytes) || !this.kind(bytes)) return STUCK;
    if (bytes[end] === SLASH) return this.commit(end + 2);
    return this.content(bytes, end + 1);
  }

  private content(bytes: Uint8Array, from: number): number {
    this.hasFormula = false;
    this.value = this.inline = null;
    for (let at = skipSpace(bytes, from); ; at = skipSpace(bytes, at)) {
      if (startsAt(bytes, at, CELL_END)) return this.commit(at + CELL_END.length);
      at = this.element(bytes, at);
      if (at === STUCK) return STUCK;
    }
  }

  private element(bytes: Uint8Array, at: number): number {
    if (startsAt(bytes, at, FORMULA)) return this.formula(bytes, at + FORMULA.length);
    if (startsAt(bytes, at, INLINE)) return this.inlineText(bytes, at + INLINE.length);
    const isKept = startsAt(bytes, at, VALUE_KEPT);
    if (this.value !== null || !(isKept || startsAt(bytes, at, VALUE))) return this.blankValue(bytes, at);
    const end = this.text.read(bytes, at + (isKept ? VALUE_KEPT : VALUE).length);
    if (end === STUCK || !startsAt(bytes, end, VALUE_END)) return STUCK;
    this.value = this.text.text;
    return end + VALUE_END.length;
  }

  private blankValue(bytes: Uint8Array, at: number): number {
    if (this.value !== null || !startsAt(bytes, at, VALUE_BLANK)) return STUCK;
    this.value = "";
    return at + VALUE_BLANK.length;
  }

  private formula(bytes: Uint8Array, from: number): number {
    if (!isSpace(bytes[from]) && bytes[from] !== MORE && bytes[from] !== SLASH) return STUCK;
    // Formulas are not read, but what stands in them must still be text.
    const start = this.tag.read(bytes, from);
    if (start === STUCK) return STUCK;
    this.hasFormula = true;
    if (bytes[start] === SLASH) return start + 2;
    const end = this.text.read(bytes, start + 1);
    return end !== STUCK && startsAt(bytes, end, FORMULA_END) ? end + FORMULA_END.length : STUCK;
  }

  private inlineText(bytes: Uint8Array, from: number): number {
    const at = skipSpace(bytes, from);
    const isKept = startsAt(bytes, at, TEXT_KEPT);
    if (this.inline !== null || !(isKept || startsAt(bytes, at, TEXT))) return STUCK;
    const end = this.text.read(bytes, at + (isKept ? TEXT_KEPT : TEXT).length);
    if (end === STUCK || !startsAt(bytes, end, TEXT_END)) return STUCK;
    this.inline = this.text.text;
    const close = skipSpace(bytes, end + TEXT_END.length);
    return startsAt(bytes, close, INLINE_END) ? close + INLINE_END.length : STUCK;
  }

  private commit(at: number): number {
    this.cells.startCellAt(this.row, this.column);
    this.cells.put({
      type: this.type,
      style: this.style,
      hasFormula: this.hasFormula,
      value: this.value,
      inline: this.inline,
    });
    return at;
  }

  private place(bytes: Uint8Array): boolean {
    const { r } = this.tag;
    if (r.from === 0) {
      this.row = this.cells.row;
      this.column = this.cells.column + 1;
      return true;
    }
    let at = r.from;
    let column = 0;
    for (let letter = bytes[at] as number; letter >= 65 && letter <= 90; letter = bytes[(at += 1)] as number) {
      column = column * 26 + letter - 64;
    }
    const row = positive(bytes, at, r.to);
    this.row = row - 1;
    this.column = column - 1;
    return row !== STUCK && at > r.from && at - r.from <= 3;
  }

  private kind(bytes: Uint8Array): boolean {
    const { s, t } = this.tag;
    this.style = s.from === 0 ? 0 : s.to - s.from > 6 ? STUCK : digits(bytes, s.from, s.to);
    this.type = "n";
    if (t.from !== 0) {
      const known = TYPES.find(({ bytes: name }) => name.length === t.to - t.from && startsAt(bytes, t.from, name));
      if (known === undefined) return false;
      this.type = known.type;
    }
    this.hasFormula = false;
    this.value = this.inline = null;
    return this.style !== STUCK;
  }
}

const TYPES = ["s", "n", "str", "b", "inlineStr", "e", "d"].map((type) => ({ type, bytes: literal(type) }));

const VALUE = literal("<v>");
const VALUE_KEPT = literal('<v xml:space="preserve">');
const VALUE_BLANK = literal("<v/>");
const VALUE_END = literal("</v>");
const CELL_END = literal("</c>");
const FORMULA = literal("<f");
const FORMULA_END = literal("</f>");
const INLINE = literal("<is>");
const INLINE_END = literal("</is>");
const TEXT = literal("<t>");
const TEXT_KEPT = literal('<t xml:space="preserve">');
const TEXT_END = literal("</t>");
