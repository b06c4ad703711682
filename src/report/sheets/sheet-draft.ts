import type { CellOut, CellStyle, ChartOut, ColumnOut, PrintOut, SheetOut, TableOut } from "../../workbook/sheets";
import type { CellRange } from "../../workbook/workbook";
import { linesOf } from "./text-width";

/** How much wider than usual a style's text is, and the height of its line in points. */
const TEXT: Partial<Record<CellStyle, { readonly times: number; readonly points: number }>> = {
  title: { times: 1.6, points: 22 },
  label: { times: 1.1, points: 15 },
  marked: { times: 1.1, points: 15 },
  heading: { times: 1.1, points: 15 },
  headingRight: { times: 1.1, points: 15 },
};
const USUAL = { times: 1, points: 15 };
/** Programs leave a little of a column's width empty, and round. */
const USABLE = 0.98;

/** A sheet in the making, from the top down. */
export class SheetDraft {
  private readonly rows: (readonly CellOut[])[] = [];
  private readonly heights = new Map<number, number>();
  private readonly merged: CellRange[] = [];

  constructor(
    private readonly name: string,
    private readonly columns: readonly ColumnOut[],
    private readonly lastTextColumn = columns.length - 1,
  ) {}

  get rowCount(): number {
    return this.rows.length;
  }

  /** What the rows take so far, points. */
  get heightPoints(): number {
    return this.rows.reduce((sum, _, row) => sum + (this.heights.get(row) ?? USUAL.points), 0);
  }

  /** Characters of the columns `from` to `to`. */
  widthOf(from: number, to: number): number {
    return this.columns.slice(from, to + 1).reduce((total, column) => total + column.width, 0);
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
    return textHeight(text, TEXT[style] ?? USUAL, this.widthOf(from, to));
  }
}

interface SheetExtras {
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly tables: readonly TableOut[];
  readonly charts: readonly ChartOut[];
}

const WRAPPED: ReadonlySet<CellStyle> = new Set(["wrapped", "note", "label", "marked", "heading", "headingRight"]);

function textHeight(text: string, { times, points }: typeof USUAL, width: number): number {
  const lines = linesOf(text, (width * USABLE) / times);
  // Excel takes no row taller than 409 points.
  return Math.min(lines * points + 3, 409);
}
