import type { CellOut, CellStyle, ChartOut, ColumnOut, PrintOut, SheetOut, TableOut } from "../../workbook/sheets";
import type { CellRange } from "../../workbook/workbook";
import { columnPoints } from "../../workbook/paper";
import { CELL_LOOKS, type CellLook, FACE } from "../../workbook/looks";
import { linesOf } from "./text-width";

/** Of a line that is written in the usual size. */
const LINE_POINTS = 15;
/** Of a row of a table on a page. */
const SMALL_LINE_POINTS = 13.5;
/** Of a digit in the usual size, and of what programs leave empty at the sides of a cell. */
const DIGIT_POINTS = 5.56;
const PADDING_POINTS = 5;
/** Programs round. */
const USABLE = 0.98;
const INDENT_POINTS = 9;
/** Excel takes no row taller. */
const TALLEST_ROW_POINTS = 409;
const BOLD_IS_WIDER = 1.07;
/** Arial sets its lines at 1.15. */
const LEADING = 1.18;

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
    return this.rows.reduce((sum, _, row) => sum + (this.heights.get(row) ?? LINE_POINTS), 0);
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
    const height = Math.max(...cells.map((cell, column) => this.heightOf(cell, column)), LINE_POINTS + 3) + extraPoints;
    if (height > LINE_POINTS + 3) this.heights.set(row, height);
  }

  /** One row whose cells each go over several columns. */
  spannedRow(cells: readonly CellOut[], spans: readonly { readonly from: number; readonly to: number }[]): void {
    const row = this.rows.length;
    const out: CellOut[] = Array.from({ length: Math.max(...spans.map(({ to }) => to)) + 1 }, () => null);
    let height = SMALL_LINE_POINTS;
    spans.forEach(({ from, to }, at) => {
      const cell = cells[at] ?? null;
      const style = typeof cell === "object" && cell !== null ? cell.style : undefined;
      // Every cell of the span has the look, so that fill and line go all the way.
      for (let column = from; column <= to; column += 1) out[column] = style ? { value: null, style } : null;
      out[from] = cell;
      if (to > from) this.merged.push({ top: row, left: from, bottom: row, right: to });
      if (
        typeof cell === "object" &&
        cell !== null &&
        typeof cell.value === "string" &&
        cell.style &&
        CELL_LOOKS[cell.style].wraps
      )
        height = Math.max(height, this.textHeight(cell.value, cell.style, from, to));
    });
    this.rows.push(out);
    this.heights.set(row, height);
  }

  /** An empty row of so many points; none where it would be too low to see. */
  gap(points: number): void {
    for (let left = points; left >= 1; left -= TALLEST_ROW_POINTS) {
      this.heights.set(this.rows.push([]) - 1, Math.min(left, TALLEST_ROW_POINTS));
    }
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
    if (typeof whole.value !== "string" || !style || !CELL_LOOKS[style].wraps) return 0;
    return this.textHeight(whole.value, style, column, column);
  }

  /** Points that a text takes over columns `from` to `to`. */
  textHeight(text: string, style: CellStyle, from: number, to: number): number {
    const points = this.columns.slice(from, to + 1).reduce((sum, { width }) => sum + columnPoints(width), 0);
    return textHeight(text, CELL_LOOKS[style], points);
  }
}

interface SheetExtras {
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly tables: readonly TableOut[];
  readonly charts: readonly ChartOut[];
}

/** Points that a text takes in height, in a column or columns of so many points. */
export function textHeight(text: string, { points, bold, indent = 0 }: CellLook, width: number): number {
  const scale = (points / FACE.points) * (bold ? BOLD_IS_WIDER : 1);
  const free = (width - PADDING_POINTS - INDENT_POINTS * indent) * USABLE;
  const lines = linesOf(text, free / DIGIT_POINTS / scale);
  return Math.min(Math.ceil(lines * points * LEADING) + 2, TALLEST_ROW_POINTS);
}
