import type { DateSystem } from "../../../age/serial";
import { CELL, a1 } from "../../../workbook/cells";
import { cellOf } from "./address";
import type { CellColumns } from "./cell-columns";
import { unescaped } from "./escapes";
import { serialFromIso } from "./iso-dates";
import type { Limits } from "./limits";
import type { Texts } from "./texts";
import { printable, refuse } from "./unreadable";

/** A cell as the file has it. Texts are raw: escapes such as `_x000D_` still stand in them. */
export interface RawCell {
  readonly type: string;
  readonly style: number;
  readonly hasFormula: boolean;
  /** What stands in `<v>`; null without one. */
  readonly value: string | null;
  /** The text of `<is>`; null without one. */
  readonly inline: string | null;
}

/** What is common to all sheets of a workbook. */
export interface BookContext {
  readonly texts: Texts;
  readonly dateStyles: Uint8Array;
  readonly dateSystem: DateSystem;
  readonly limits: Limits;
}

/**
 * The cells of one sheet as they are met, in file order: where each stands and what its text means. The fallback parser and
 * the byte scanner both end here, so that they cannot differ in meaning.
 */
export class SheetCells {
  row = -1;
  column = -1;
  /** Whether the row says its own number, which its cells then must not contradict. */
  rowIsNumbered = false;

  constructor(
    readonly columns: CellColumns,
    readonly book: BookContext,
    private readonly sheet: string,
  ) {}

  startRow(number: string | null): void {
    if (number !== null && !/^[1-9][0-9]{0,6}$/.test(number)) this.refuse("has a row without a proper number");
    this.startRowAt(number === null ? this.row + 1 : Number(number) - 1, number !== null);
  }

  startRowAt(row: number, isNumbered: boolean): void {
    if (row >= this.book.limits.rows) this.refuse(`has more than the ${this.book.limits.rows} rows that are read`);
    this.row = row;
    this.column = -1;
    this.rowIsNumbered = isNumbered;
  }

  startCell(address: string | null): void {
    const cell = address === null ? { row: this.row, column: this.column + 1 } : cellOf(address);
    if (cell === null) return this.refuse("has a cell without a proper address");
    this.startCellAt(cell.row, cell.column);
  }

  startCellAt(row: number, column: number): void {
    const { limits } = this.book;
    if (row !== this.row) {
      if (this.rowIsNumbered) this.refuse("has a cell whose address contradicts its row");
      if (row >= limits.rows) this.refuse(`has more than the ${limits.rows} rows that are read`);
      this.row = row;
    }
    if (column >= limits.columns) this.refuse(`has more than the ${limits.columns} columns that are read`);
    this.column = column;
  }

  put(cell: RawCell): void {
    const { type, value } = cell;
    if (type === "inlineStr" && cell.inline !== null) return this.putText(unescaped(cell.inline));
    // A formula may well have the text "" as its result; a number, a date or an error is never blank.
    if (type === "str" && value !== null) return this.putText(unescaped(value));
    const trimmed = value?.replace(/^[ \t\r\n]+|[ \t\r\n]+$/g, "") ?? "";
    if (trimmed === "") return cell.hasFormula ? this.putNoCachedValue() : undefined;
    this.putTyped(cell, trimmed);
  }

  putNumber(value: number, style: number): void {
    const isDate = style < this.book.dateStyles.length && this.book.dateStyles[style] === 1;
    this.columns.set(this.row, this.column, isDate ? CELL.date : CELL.number, value);
  }

  putShared(index: number): void {
    if (!(index < this.book.texts.shared)) this.refuse("points to a text that the file does not have", true);
    if (this.book.texts.list[index] !== "") this.columns.set(this.row, this.column, CELL.text, index);
  }

  putBoolean(value: 0 | 1): void {
    this.columns.set(this.row, this.column, CELL.boolean, value);
  }

  /** The empty text is an empty cell. */
  putText(text: string): void {
    if (text !== "") this.columns.set(this.row, this.column, CELL.text, this.book.texts.indexFor(text));
  }

  private putNoCachedValue(): void {
    this.columns.set(this.row, this.column, CELL.noCachedValue, 0);
  }

  private putTyped(cell: RawCell, value: string): void {
    if (cell.type === "n") return this.putNumber(this.numberOf(value), cell.style);
    if (cell.type === "s") return this.putShared(/^[0-9]{1,9}$/.test(value) ? Number(value) : Infinity);
    if (cell.type === "b") return this.putBoolean(this.booleanOf(value));
    if (cell.type === "d") return this.putIsoDate(value);
    if (cell.type !== "e") return this.refuse("has a value of an unknown kind", true);
    this.columns.set(this.row, this.column, CELL.error, this.book.texts.indexFor(unescaped(value)));
  }

  private numberOf(value: string): number {
    const isNumber =
      /^[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?$/.test(value) && Number.isFinite(Number(value));
    return isNumber ? Number(value) : this.refuse("should have a number and does not", true);
  }

  private booleanOf(value: string): 0 | 1 {
    if (value === "1" || value === "true") return 1;
    return value === "0" || value === "false" ? 0 : this.refuse("should have TRUE or FALSE and does not", true);
  }

  /** A date that cannot be read stays the text that it is: the records say what is wrong with it. */
  private putIsoDate(value: string): void {
    const serial = serialFromIso(value, this.book.dateSystem);
    if (serial === null) this.putText(unescaped(value));
    else this.columns.set(this.row, this.column, CELL.date, serial);
  }

  refuse(what: string, inCell = false): never {
    const place = inCell ? `, cell ${a1(this.row, this.column)},` : "";
    return refuse(`The sheet "${printable(this.sheet)}"${place} ${what}: open the file in Excel and save it again.`);
  }
}
