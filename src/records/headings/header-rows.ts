import { CELL, type Grid } from "../../workbook/cells";
import type { CellRange, SheetIn } from "../../workbook/workbook";
import { beginsMerged, headerCells, isTall } from "./header-cells";
import { type HeaderCell, headingKeys, matchHeadings } from "./headings";
import type { DecidedHeadings } from "./table-match";
import { TABLES } from "../tables";
import { headingKey } from "../cells/words";

/** One row of headings, or two that are read together. */
export interface Header {
  readonly top: number;
  readonly height: 1 | 2;
  readonly cells: readonly HeaderCell[];
}

/** Reads a row of headings alone, and together with the row above or below where cells are merged; the fuller reading counts. */
export function bestHeader(sheet: SheetIn, row: number, decided: DecidedHeadings): Header {
  const read = (top: number, height: 1 | 2): Header => ({
    top,
    height,
    cells: headerCells(sheet, top, height, 0, sheet.grid.columns.length - 1).filter(
      (cell) => !sheet.tables.some((table) => table.headerRow && inside(table.range, cell.row, cell.column)),
    ),
  });
  const single = read(row, 1);
  const stacked: Header[] = [];
  if (beginsMerged(sheet, row)) stacked.push(read(row, 2));
  if (row > 0 && beginsMerged(sheet, row - 1)) stacked.push(read(row - 1, 2));
  const tall = single.cells.some((cell) => isTall(sheet, row, cell.column));
  return stacked.reduce((best, each) => {
    const gain = matchedColumns(each, decided) - matchedColumns(best, decided);
    return gain > 0 || (gain === 0 && tall && each.top === row) ? each : best;
  }, single);
}

function matchedColumns(header: Header, decided: DecidedHeadings): number {
  return Math.max(...TABLES.map((spec) => matchHeadings(spec, header.cells, decided.get(spec.name)).columns.size));
}

/** A sheet has a handful of header rows; one whose cells are full of such words must not slow the reading down. */
const MOST_HEADER_ROWS = 1000;

/** Rows that hold a heading for a child or a skill: every table has one of the two. */
export function anchorRows(grid: Grid, decided: DecidedHeadings): number[] {
  const anchors = anchorKeys(decided);
  const isAnchor = Uint8Array.from(grid.strings, (text) => (text.length < 64 && anchors.has(headingKey(text)) ? 1 : 0));
  const rows = new Set<number>();
  for (const column of grid.columns) {
    column?.kinds.forEach((kind, row) => {
      if (kind === CELL.text && isAnchor[column.values[row] as number] === 1) rows.add(row);
    });
  }
  return [...rows].sort((a, b) => a - b).slice(0, MOST_HEADER_ROWS);
}

function anchorKeys(decided: DecidedHeadings): Set<string> {
  const columns = TABLES.flatMap((spec) => spec.columns.filter((column) => ["child", "skill"].includes(column.key)));
  const keys = new Set(columns.flatMap(headingKeys));
  for (const headings of decided.values()) {
    for (const [heading, column] of headings) if (column === "child" || column === "skill") keys.add(heading);
  }
  return keys;
}

function inside(range: CellRange, row: number, column: number): boolean {
  return row >= range.top && row <= range.bottom && column >= range.left && column <= range.right;
}
