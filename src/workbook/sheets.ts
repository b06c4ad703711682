import type { SeriesLook } from "./series-looks";
import type { CellRange } from "./workbook";

/**
 * A sheet as data out: what every host writes, and the only form in which the core makes one. Values only, never a
 * formula. Rows and columns count from 0.
 */
export interface SheetOut {
  /** Made safe and unique by `safeSheetNames` before it is written. */
  readonly name: string;
  readonly columns: readonly ColumnOut[];
  /** From A1 down; a row may be shorter than `columns`. */
  readonly rows: readonly (readonly CellOut[])[];
  /** Points, by row number, where a row is taller or lower than usual. */
  readonly rowHeights?: ReadonlyMap<number, number>;
  /** What stays in sight: so many rows from the top and columns from the left. */
  readonly frozen?: { readonly rows: number; readonly columns: number };
  readonly tables?: readonly TableOut[];
  /** Cells that offer a list to choose from. Only files have them. */
  readonly lists?: readonly ListOut[];
  readonly merged?: readonly CellRange[];
  readonly charts?: readonly ChartOut[];
  readonly print?: PrintOut;
  /** False hides the grid on the screen; shown when left out. */
  readonly gridlines?: boolean;
}

/** A list to choose from: values written out, or the cells of another sheet. One of the two. */
export interface ListOut {
  readonly range: CellRange;
  readonly values?: readonly string[];
  readonly from?: { readonly sheet: string; readonly range: CellRange };
}

export interface ColumnOut {
  /** Characters of the usual font. */
  readonly width: number;
  /** For cells of this column that bring no format of their own. */
  readonly format?: CellFormat;
  readonly style?: CellStyle;
}

export type CellValue = string | number | boolean | null;
export type CellOut = CellValue | StyledCell;

export interface StyledCell {
  readonly value: CellValue;
  readonly format?: CellFormat;
  readonly style?: CellStyle;
}

/**
 * How a number is shown. `date`: the number is a day, whole days since January 1, 1970, and the host writes it in the
 * date system of its workbook. `share`: 0 to 1, shown as a percent. `percent`: 0 to 100.
 */
export type CellFormat =
  "count" | "share" | "wholeShare" | "percent" | "months" | "decimal2" | "decimal3" | "number" | "date";

export type CellStyle =
  | "title"
  | "subtitle"
  | "section"
  | "note"
  | "heading"
  | "headingRight"
  | "label"
  | "text"
  | "wrapped"
  | "total"
  | "marked"
  /** What is held back, in place of a figure. */
  | "heldBack"
  /** The same words as in the row above. */
  | "repeated"
  /** On a page of the report: what a figure says, and what qualifies it. */
  | "headline"
  | "small"
  | "boxTitle"
  | "box"
  /** Tables on a page of the report. */
  | "cell"
  | "cellMiddle"
  | "cellRight"
  | "cellHeading"
  | "cellHeadingMiddle"
  | "cellHeadingRight"
  /** Shaded from paper to dark; `Past` is bold. */
  | `step${ShadeStep}`
  | `step${ShadeStep}Past`;

export type ShadeStep = 0 | 1 | 2 | 3;

/** An Excel table. Its headings are the cells of the first row of its range, which must be texts that differ. */
export interface TableOut {
  readonly name: string;
  readonly range: CellRange;
}

export interface PrintOut {
  readonly landscape: boolean;
  /** Rows printed again at the top of every page, both ends in. */
  readonly repeatRows?: { readonly first: number; readonly last: number };
  /** Pages across; pages down are as many as it takes, or one. */
  readonly fit: "one page wide" | "one page";
  readonly area?: CellRange;
  /** Printed at the foot, left of "Page 1 of 3". */
  readonly footer: string;
  readonly header?: string;
}

/**
 * A native chart over cells of its own sheet. Stacked columns take series with the look of a line too: they are drawn over
 * them, and come after those that are stacked.
 */
export interface ChartOut {
  readonly kind: "column stacked" | "bar stacked" | "bar share stacked" | "column share stacked" | "line" | "curve";
  readonly title: string;
  /** The same message in words, for someone who does not see the chart. */
  readonly altText: string;
  readonly at: { readonly row: number; readonly column: number };
  readonly widthPixels: number;
  readonly heightPixels: number;
  readonly series: readonly SeriesOut[];
  readonly x: AxisOut;
  readonly y: AxisOut;
  readonly legend: "none" | "bottom" | "right";
  /** What a table beside the chart tells for each label and the chart does not draw, such as the counts behind a share. */
  readonly told?: readonly { readonly name: string; readonly cells: CellRange }[];
}

/** One series. `x` holds the categories, or the abscissae of a curve. */
export interface SeriesOut {
  readonly name: string;
  readonly x: CellRange;
  readonly y: CellRange;
  readonly look: SeriesLook;
  /** Its name is written above its mark, or right of it. */
  readonly named?: boolean | "right";
  /** A line to read the others by: a table beside the chart leaves it out. */
  readonly guide?: boolean;
  /** Goes on where the one before it breaks off: told as one with it. */
  readonly continues?: boolean;
}

export interface AxisOut {
  readonly title: string;
  readonly min?: number;
  readonly max?: number;
  /** Distance of the labelled marks. */
  readonly step?: number;
  readonly format?: CellFormat;
  /** Read downwards: the first category on top. */
  readonly reversed?: boolean;
  /** Not drawn, where its numbers only keep rows apart. */
  readonly hidden?: boolean;
  /** Of labels in a row, only each so many is written; 0: none. */
  readonly labelEvery?: number;
}

/** The widest text a cell holds. Source: Microsoft, "Excel specifications and limits". */
export const LONGEST_CELL_TEXT = 32_767;
/** Rows of a sheet, from the same source. */
export const MOST_ROWS = 1_048_576;
