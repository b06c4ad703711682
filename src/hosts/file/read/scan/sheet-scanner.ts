import type { SheetCells } from "../sheet-cells";
import type { SheetHandler } from "../sheet-handler";
import type { XmlReader } from "../xml-reader";
import { isSpace, literal, MORE, SLASH, skipSpace, startsAt, STUCK } from "./bytes";
import { CellScanner } from "./cell-scanner";
import type { Scanner } from "./scanned-part";
import { positive, TagScanner } from "./tag-scanner";

/** Reads rows and cells between `<sheetData>` and `</sheetData>` from bytes. */
export class SheetScanner implements Scanner {
  readonly container = literal("<sheetData");
  private readonly tag = new TagScanner();
  private readonly cell: CellScanner;
  private isInRow = false;

  constructor(
    private readonly cells: SheetCells,
    private readonly handler: SheetHandler,
  ) {
    this.cell = new CellScanner(cells);
  }

  get isReady(): boolean {
    return this.handler.isInData;
  }

  next(bytes: Uint8Array, from: number): number {
    const at = skipSpace(bytes, from);
    if (!this.isInRow) return startsAt(bytes, at, ROW) ? this.openRow(bytes, at + ROW.length) : STUCK;
    if (startsAt(bytes, at, CELL_START)) return this.cell.read(bytes, at + CELL_START.length);
    if (!startsAt(bytes, at, ROW_END)) return STUCK;
    this.isInRow = false;
    return at + ROW_END.length;
  }

  isAtEnd(bytes: Uint8Array, at: number): boolean {
    return !this.isInRow && startsAt(bytes, skipSpace(bytes, at), DATA_END);
  }

  handOver(xml: XmlReader): void {
    if (!this.isInRow) return;
    const { column } = this.cells;
    this.handler.resume();
    xml.write(literal("<row>"));
    this.cells.column = column;
  }

  private openRow(bytes: Uint8Array, from: number): number {
    if (!isSpace(bytes[from]) && bytes[from] !== MORE && bytes[from] !== SLASH) return STUCK;
    const end = this.tag.read(bytes, from);
    if (end === STUCK) return STUCK;
    const { r } = this.tag;
    const number = r.from === 0 ? this.cells.row + 2 : positive(bytes, r.from, r.to);
    if (number === STUCK) return STUCK;
    this.cells.startRowAt(number - 1, r.from !== 0);
    this.isInRow = bytes[end] === MORE;
    return this.isInRow ? end + 1 : end + 2;
  }
}

const ROW = literal("<row");
const ROW_END = literal("</row>");
const CELL_START = literal("<c");
const DATA_END = literal("</sheetData");
