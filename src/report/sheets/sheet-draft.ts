import type { CellOut, CellStyle, ChartOut, ColumnOut, PrintOut, SheetOut, TableOut } from "../../workbook/sheets";
import type { CellRange } from "../../workbook/workbook";

/** Characters of a style on a line as wide as 100 characters of the usual font, and the height of that line in points. */
const TEXT: Partial<Record<CellStyle, { readonly perHundred: number; readonly points: number }>> = {
  title: { perHundred: 60, points: 22 },
};
const USUAL = { perHundred: 107, points: 15 };
/** Characters of running text on a line as wide as 100 characters, where lines may be measured less cautiously. */
export const TIGHT_TEXT = 120;

/** A sheet in the making, from the top down. */
export class SheetDraft {
  private readonly rows: (readonly CellOut[])[] = [];
  private readonly heights = new Map<number, number>();
  private readonly merged: CellRange[] = [];

  constructor(
    private readonly name: string,
    private readonly columns: readonly ColumnOut[],
    private readonly lastTextColumn = columns.length - 1,
    private readonly perHundred = USUAL.perHundred,
  ) {}

  get rowCount(): number {
    return this.rows.length;
  }

  /** What the rows take so far, points. */
  get heightPoints(): number {
    return this.rows.reduce((sum, _, row) => sum + (this.heights.get(row) ?? USUAL.points), 0);
  }

  /** A line of text over columns `from` to `to`, as tall as the text needs. */
  spanning(text: string, style: CellStyle, from = 0, to = this.lastTextColumn): void {
    this.beside(
      Array.from({ length: from }, () => null),
      text,
      style,
      { to },
    );
  }

  /** Cells, and right of them a line of text up to column `to`; as tall as the text needs, and `extraPoints` more. */
  beside(
    lead: readonly CellOut[],
    text: string,
    style: CellStyle,
    { to = this.lastTextColumn, extraPoints = 0 },
  ): void {
    const row = this.rows.length;
    const from = lead.length;
    this.rows.push([...lead, { value: text, style }]);
    if (to > from) this.merged.push({ top: row, left: from, bottom: row, right: to });
    const leads = lead.map((cell, column) => this.heightOf(cell, column));
    this.heights.set(row, Math.max(this.textHeight(text, style, from, to), ...leads) + extraPoints);
  }

  /** As tall as its longest wrapped text needs, and `extraPoints` more. */
  row(cells: readonly CellOut[], extraPoints = 0): void {
    const row = this.rows.push(cells) - 1;
    const height =
      Math.max(...cells.map((cell, column) => this.heightOf(cell, column)), USUAL.points + 3) + extraPoints;
    if (height > USUAL.points + 3) this.heights.set(row, height);
  }

  addRows(rows: readonly (readonly CellOut[])[]): void {
    for (const cells of rows) this.row(cells);
  }

  /** The body of a table, with a little air below its headings. */
  body(rows: readonly (readonly CellOut[])[]): void {
    rows.forEach((cells, index) => this.row(cells, index === 0 ? 3 : 0));
  }

  blank(count = 1): void {
    for (let each = 0; each < count; each += 1) this.rows.push([]);
  }

  finished(print: PrintOut, more: Partial<SheetExtras> = {}): SheetOut {
    const { name, columns, rows, merged } = this;
    return { name, columns, rows, merged, rowHeights: this.heights, gridlines: false, print, ...more };
  }

  private heightOf(cell: CellOut, column: number): number {
    const whole = typeof cell === "object" && cell !== null ? cell : { value: cell };
    const style = whole.style ?? this.columns[column]?.style;
    if (typeof whole.value !== "string" || !style || !WRAPPED.has(style)) return 0;
    return this.textHeight(whole.value, style, column, column);
  }

  private textHeight(text: string, style: CellStyle, from: number, to: number): number {
    return textHeight(text, TEXT[style] ?? { ...USUAL, perHundred: this.perHundred }, this.widthOf(from, to));
  }

  private widthOf(from: number, to: number): number {
    return this.columns.slice(from, to + 1).reduce((total, column) => total + column.width, 0);
  }
}

interface SheetExtras {
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly tables: readonly TableOut[];
  readonly charts: readonly ChartOut[];
}

const WRAPPED: ReadonlySet<CellStyle> = new Set(["wrapped", "note", "label", "marked", "heading", "headingRight"]);

function textHeight(text: string, { perHundred, points }: typeof USUAL, width: number): number {
  const perLine = Math.max(1, Math.floor((width * perHundred) / 100));
  const lines = text.split("\n").reduce((total, line) => total + linesOf(line, perLine), 0);
  // Excel takes no row taller than 409 points.
  return Math.min(lines * points + 3, 409);
}

/** Lines that a paragraph takes when it breaks between words. */
function linesOf(paragraph: string, perLine: number): number {
  let lines = 1;
  let used = 0;
  for (const word of paragraph.split(" ")) {
    const needed = used === 0 ? word.length : used + 1 + word.length;
    if (needed <= perLine) used = needed;
    else {
      lines += used === 0 ? Math.ceil(word.length / perLine) - 1 : Math.ceil(word.length / perLine);
      used = word.length % perLine;
    }
  }
  return lines;
}
