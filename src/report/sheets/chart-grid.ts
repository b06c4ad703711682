import type { CellOut, ColumnOut } from "../../workbook/sheets";
import type { CellRange } from "../../workbook/workbook";
import { SheetDraft } from "./sheet-draft";

/** A chart sheet: twelve equal columns for the charts, and to their right, not printed, the numbers behind them. */
const CHART_COLUMNS = 12;
const COLUMN_CHARACTERS = 11;
/** Pixels of a column of 11 characters, and of a row, in the usual font. */
const COLUMN_PIXELS = 82;
const ROW_PIXELS = 20;
const NUMBERS_LEFT = CHART_COLUMNS + 1;

export function chartDraft(name: string, numberColumns: readonly ColumnOut[]): SheetDraft {
  const chartColumns = Array.from({ length: CHART_COLUMNS }, () => ({ width: COLUMN_CHARACTERS }));
  return new SheetDraft(name, [...chartColumns, { width: 3 }, ...numberColumns]);
}

export function chartLine(draft: SheetDraft, text: string, style: "title" | "subtitle" | "section" | "note"): void {
  draft.spanning(text, style, 0, CHART_COLUMNS - 1);
}

/** Where the chart of a place in the grid stands, and how wide it is. */
export function placeInGrid(index: number, perRow: number, top: number, heightPixels: number) {
  const columns = CHART_COLUMNS / perRow;
  const rowsEach = Math.ceil(heightPixels / ROW_PIXELS) + 1;
  return {
    at: { row: top + Math.floor(index / perRow) * rowsEach, column: (index % perRow) * columns },
    widthPixels: columns * COLUMN_PIXELS - 8,
    heightPixels,
  };
}

/** The rows that `count` charts take. */
export function rowsOfGrid(count: number, perRow: number, heightPixels: number): number {
  return Math.ceil(count / perRow) * (Math.ceil(heightPixels / ROW_PIXELS) + 1);
}

export function printedArea(lastRow: number): CellRange {
  return { top: 0, left: 0, bottom: lastRow, right: CHART_COLUMNS - 1 };
}

/** Numbers behind the charts, as rows that start right of the charts. */
export class NumbersBehind {
  private readonly rows: CellOut[][] = [];

  constructor(
    private readonly top: number,
    heading: string,
    /** The column in which the numbers begin. */
    private readonly left = NUMBERS_LEFT,
  ) {
    this.rows.push([{ value: heading, style: "section" }]);
  }

  add(cells: readonly CellOut[]): void {
    this.rows.push([...cells]);
  }

  /** The range of the last `count` rows, in one of the number columns. */
  lastRows(count: number, column: number): CellRange {
    const bottom = this.top + this.rows.length - 1;
    const left = this.left + column;
    return { top: bottom - count + 1, left, bottom, right: left };
  }

  /** The rows as cells of the sheet, right of the charts. */
  cells(): CellOut[][] {
    const lead = Array.from({ length: this.left }, () => null);
    return this.rows.map((row) => [...lead, ...row]);
  }
}
