import type { SaxesTagNS } from "saxes";
import type { CellRange } from "../../../workbook/workbook";
import { rangeOf } from "./address";
import type { RawCell, SheetCells } from "./sheet-cells";
import { attribute, OUTSIDE, type XmlHandler } from "./xml-reader";

/** The whole of a worksheet part through the fallback parser: its cells too, where the byte scanner does not read them. */
export class SheetHandler implements XmlHandler {
  readonly merged: CellRange[] = [];
  /** Inside `<sheetData>` written without a prefix: what the byte scanner can take over. */
  isInData = false;
  private hasData = false;
  private depth = 0;
  private isInRow = false;
  private isResuming = false;
  private cell = blankCell("n", 0);
  /** Whether the text at hand belongs to the cell, and not to a phonetic run. */
  private isInlineText = false;

  constructor(private readonly cells: SheetCells) {}

  /** The next `<row>` only puts the parser where the scanner stopped. */
  resume(): void {
    this.isResuming = true;
  }

  open(name: string, parent: string, tag: SaxesTagNS): void {
    this.depth += 1;
    if (this.isInRow) this.openInRow(name, parent, tag);
    else if (name === "row" && parent === "sheetData" && this.depth === ROW_DEPTH) this.openRow(tag);
    else if (name === "sheetData" && parent === "worksheet" && this.depth === ROW_DEPTH - 1) this.openData(tag);
    else if (name === "mergeCell" && parent === "mergeCells") this.merge(attribute(tag, "ref") ?? "");
    else if (parent === OUTSIDE && name !== "worksheet") this.cells.refuse("is not a worksheet");
  }

  text(text: string, name: string): void {
    if (!this.isInRow) return;
    if (name === "v" && this.cell.value !== null) this.cell.value += text;
    else if (name === "t" && this.isInlineText && this.cell.inline !== null) this.cell.inline += text;
  }

  close(name: string): void {
    if (this.isInRow && name === "c" && this.depth === CELL_DEPTH) {
      this.cells.put(this.cell);
      this.cell = blankCell("n", 0);
    } else if (this.depth === ROW_DEPTH) this.isInRow = false;
    else if (this.depth === ROW_DEPTH - 1) this.isInData = false;
    this.depth -= 1;
  }

  private openInRow(name: string, parent: string, tag: SaxesTagNS): void {
    if (name === "c" && this.depth === CELL_DEPTH) this.openCell(tag);
    else if (name === "t") this.isInlineText = parent === "is" || parent === "r";
    else if (parent !== "c" || this.depth !== CELL_DEPTH + 1) return;
    else if (name === "v") this.cell.value = this.first(this.cell.value);
    else if (name === "is") this.cell.inline = this.first(this.cell.inline);
    else if (name === "f") this.cell.hasFormula = true;
  }

  private openData(tag: SaxesTagNS): void {
    if (this.hasData) this.cells.refuse("has its cells in two lists");
    this.hasData = true;
    this.isInData = tag.prefix === "";
  }

  private openRow(tag: SaxesTagNS): void {
    if (!this.isResuming) this.cells.startRow(attribute(tag, "r"));
    this.isResuming = false;
    this.isInRow = true;
  }

  private openCell(tag: SaxesTagNS): void {
    this.cells.startCell(attribute(tag, "r"));
    const style = attribute(tag, "s") ?? "0";
    if (!/^[0-9]{1,6}$/.test(style)) this.cells.refuse("has a cell style without a proper number", true);
    this.cell = blankCell(attribute(tag, "t") ?? "n", Number(style));
  }

  private first(before: string | null): string {
    return before === null ? "" : this.cells.refuse("has two values", true);
  }

  private merge(ref: string): void {
    const { limits } = this.cells.book;
    const range = rangeOf(ref);
    if (range === null || range.bottom >= limits.rows || range.right >= limits.columns) {
      return this.cells.refuse("has a merged range without a proper address");
    }
    if (this.merged.push(range) > limits.marks) this.cells.refuse("has more merged ranges than are read");
  }
}

/** worksheet, sheetData, row, c */
const ROW_DEPTH = 3;
const CELL_DEPTH = 4;

function blankCell(type: string, style: number): { -readonly [key in keyof RawCell]: RawCell[key] } {
  return { type, style, hasFormula: false, value: null, inline: null };
}
