import type { Grid } from "./cells";

/** A workbook as data in. */
export interface WorkbookIn {
  readonly dateSystem: 1900 | 1904;
  readonly sheets: readonly SheetIn[];
}

export interface SheetIn {
  readonly name: string;
  /** The file that the sheet is in; only where the records come from several. */
  readonly file?: string;
  /** Where its file has another date system than the workbook says. */
  readonly dateSystem?: WorkbookIn["dateSystem"];
  readonly grid: Grid;
  readonly tables: readonly TableIn[];
  readonly merged: readonly CellRange[];
}

/** An Excel table (ListObject). */
export interface TableIn {
  readonly name: string;
  /** With its header row and, where it has one, its totals row. */
  readonly range: CellRange;
  readonly headerRow: boolean;
  readonly totalsRow: boolean;
}

/** Counted from 0, both ends in. */
export interface CellRange {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}
