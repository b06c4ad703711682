import { columnPoints, roomOnPaper } from "../../../workbook/paper";
import type { CellOut, CellStyle, ChartOut, ColumnOut, SheetOut } from "../../../workbook/sheets";
import { chartOf, type Picture } from "../../answer/picture";
import type { Report } from "../../report";
import { NumbersBehind } from "../chart-grid";
import { footerOf } from "../page";
import { SheetDraft } from "../sheet-draft";

export interface Line {
  readonly text: string;
  readonly style: CellStyle;
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A chart that is drawn once it has a place: a picture, or one that writes its own numbers. */
export type Drawable =
  Picture | ((place: Pick<ChartOut, "at" | "widthPixels" | "heightPixels">, numbers: NumbersBehind) => ChartOut);

/** Of the sentence at the foot of a page. */
export const CAUTION_POINTS = 14;
const PIXELS_PER_POINT = 4 / 3;
const BETWEEN_CHARTS_POINTS = 8;
/** Right of what is printed, past an empty column. */
const NUMBER_COLUMNS: readonly ColumnOut[] = [{ width: 40 }, ...Array.from({ length: 8 }, () => ({ width: 12 }))];

/**
 * One page of the report on one sheet, from the top down. The numbers behind its charts, and each chart in words, are right
 * of what is printed.
 */
export class PrintedPage {
  readonly numbers: NumbersBehind;
  readonly lastColumn: number;
  private readonly draft: SheetDraft;
  private readonly charts: ChartOut[] = [];

  constructor(
    readonly name: string,
    private readonly widths: readonly number[],
    private readonly landscape: boolean,
  ) {
    this.lastColumn = widths.length - 1;
    const columns = widths.map((width) => ({ width }));
    this.draft = new SheetDraft(name, [...columns, { width: 3 }, ...NUMBER_COLUMNS], this.lastColumn);
    this.numbers = new NumbersBehind(0, "Numbers behind the charts", widths.length + 1);
  }

  /** Points that are still free on the page. */
  get roomLeft(): number {
    return roomOnPaper(this.landscape).height - this.draft.heightPoints;
  }

  text(text: string, style: CellStyle, { from, to }: Span = this.whole): void {
    this.draft.spanning(text, style, from, to);
  }

  /** As many notes as there is room for, less `kept` points; what is left out is named. */
  notes(lines: readonly string[], kept: number): void {
    for (const [at, line] of lines.entries()) {
      if (
        this.roomLeft - this.draft.textHeight(line, "small", 0, this.lastColumn) <
        kept + (at < lines.length - 1 ? 13 : 0)
      )
        return this.text(MORE_NOTES, "small");
      this.text(line, "small");
    }
  }

  /** A few notes for this page, and where the others are. */
  shortNotes(lines: readonly string[], kept: number): void {
    this.notes([...lines, MORE_NOTES], kept);
  }

  row(cells: readonly CellOut[]): void {
    this.draft.row(cells);
  }

  /** Cells of a table over several columns each. */
  spannedRow(cells: readonly CellOut[], spans: readonly Span[]): void {
    this.draft.spannedRow(cells, spans);
  }

  space(points: number): void {
    this.draft.gap(points);
  }

  /** Lines, and beside them a picture as tall as they, or as `points`. */
  beside(lines: readonly Line[], text: Span, picture: Picture | null, chart: Span, points: number): void {
    const row = this.draft.rowCount;
    const before = this.draft.heightPoints;
    for (const line of lines) this.text(line.text, line.style, text);
    const height = Math.max(points, this.draft.heightPoints - before);
    this.space(height - (this.draft.heightPoints - before));
    if (picture) this.draw(picture, row, chart, height, false);
  }

  /** Charts side by side over the whole breadth. */
  chartRow(drawables: readonly Drawable[], points: number, titled = true): void {
    const row = this.draft.rowCount;
    this.space(points);
    drawables.forEach((each, at) => {
      const from = this.columnAt(at / drawables.length);
      const to = at === drawables.length - 1 ? this.lastColumn : this.columnAt((at + 1) / drawables.length) - 1;
      this.draw(each, row, { from, to }, points, titled);
    });
  }

  finished(report: Report): SheetOut {
    const { landscape, lastColumn, charts } = this;
    const area = { top: 0, left: 0, bottom: this.draft.rowCount - 1, right: lastColumn };
    for (const { altText } of charts) this.numbers.add([altText]);
    const sheet = this.draft.finished(
      { landscape, fit: "one page", area, footer: footerOf(report) },
      charts.length === 0 ? {} : { charts },
    );
    return charts.length === 0 ? sheet : { ...sheet, rows: beside(sheet.rows, this.numbers.cells(), lastColumn + 1) };
  }

  private get whole(): Span {
    return { from: 0, to: this.lastColumn };
  }

  private draw(drawable: Drawable, row: number, { from, to }: Span, points: number, titled: boolean): void {
    const breadth = this.widths.slice(from, to + 1).reduce((sum, width) => sum + columnPoints(width), 0);
    const place = {
      at: { row, column: from },
      widthPixels: Math.floor((breadth - BETWEEN_CHARTS_POINTS) * PIXELS_PER_POINT),
      heightPixels: Math.floor((points - 4) * PIXELS_PER_POINT),
    };
    this.charts.push(
      typeof drawable === "function" ? drawable(place, this.numbers) : chartOf(drawable, place, this.numbers, titled),
    );
  }

  /** The column that begins nearest to a share of the page's breadth. */
  private columnAt(share: number): number {
    const starts = this.widths.map((_, at) =>
      this.widths.slice(0, at).reduce((sum, width) => sum + columnPoints(width), 0),
    );
    const total = this.widths.reduce((sum, width) => sum + columnPoints(width), 0);
    const distance = (at: number) => Math.abs((starts[at] as number) - share * total);
    return starts.reduce((best, _, at) => (distance(at) < distance(best) ? at : best), 0);
  }
}

const MORE_NOTES = "The data workbook has the other notes, below the rows of the table.";

/** The rows of the page with those of the numbers right of them. */
function beside(
  rows: readonly (readonly CellOut[])[],
  block: readonly (readonly CellOut[])[],
  left: number,
): CellOut[][] {
  return Array.from({ length: Math.max(rows.length, block.length) }, (_, row) => {
    const own = [...(rows[row] ?? [])];
    while (own.length < left) own.push(null);
    return [...own, ...(block[row] ?? []).slice(left)];
  });
}
