import type { CellRange, SheetIn, TableIn, WorkbookIn } from "../../workbook/workbook";
import { headerCells } from "./header-cells";
import { anchorRows, bestHeader, type Header } from "./header-rows";
import { type HeaderCell, type HeadingMatch, matchHeadings } from "./headings";
import { type Found, splitHeader } from "./split-header";
import { bestSpec, type DecidedHeadings, specNamed } from "./table-match";
import type { TableSpec } from "../tables/spec";

/** A place that looks like a table: headings, and the rows below them that may belong to it. */
export interface Region {
  readonly sheetIndex: number;
  readonly sheet: SheetIn;
  readonly cells: readonly HeaderCell[];
  readonly range: CellRange;
  readonly firstRow: number;
  readonly totalsRow: number | null;
  /** The table that it is, by its name or by its headings; null where the headings fit none. */
  readonly spec: TableSpec | null;
  readonly match: HeadingMatch | null;
  /** Headings beside it in the same row that belong to no table. */
  readonly beside: readonly HeaderCell[];
}

/** Every region of the workbook, Excel tables first on their sheet, then headings wherever they stand. */
export function findRegions(workbook: WorkbookIn, decided: DecidedHeadings): Region[] {
  return workbook.sheets.flatMap((sheet, sheetIndex) => {
    const named = sheet.tables
      .filter((table) => table.headerRow)
      .map((table) => regionOf(sheet, sheetIndex, table, decided));
    const free = freeRegions(sheet, sheetIndex, decided);
    const all = [...named, ...free];
    return [...named, ...free.map((region) => ({ ...region, range: bounded(region, all) }))];
  });
}

function regionOf(sheet: SheetIn, sheetIndex: number, table: TableIn, decided: DecidedHeadings): Region {
  const { range } = table;
  const cells = headerCells(sheet, range.top, 1, range.left, range.right);
  const spec = specNamed(table.name);
  const found = spec ? { spec, match: matchHeadings(spec, cells, decided.get(spec.name)) } : bestSpec(cells, decided);
  return {
    sheetIndex,
    sheet,
    cells,
    range,
    firstRow: range.top + 1,
    totalsRow: table.totalsRow ? range.bottom : null,
    spec: found?.spec ?? null,
    match: found?.match ?? null,
    beside: [],
  };
}

function freeRegions(sheet: SheetIn, sheetIndex: number, decided: DecidedHeadings): Region[] {
  const regions: Region[] = [];
  let below = 0;
  for (const row of anchorRows(sheet.grid, decided)) {
    if (row < below) continue;
    const header = bestHeader(sheet, row, decided);
    const found = splitHeader(header.cells, decided);
    if (found.length === 0) continue;
    below = header.top + header.height;
    regions.push(...found.map((each) => freeRegion(sheet, sheetIndex, header, each)));
  }
  return regions;
}

function freeRegion(sheet: SheetIn, sheetIndex: number, header: Header, found: Found): Region {
  const columns = found.cells.map((cell) => cell.column);
  const range = {
    top: header.top,
    left: columns[0] as number,
    bottom: sheet.grid.rowCount - 1,
    right: columns.at(-1) as number,
  };
  return { sheetIndex, sheet, range, firstRow: header.top + header.height, totalsRow: null, ...found };
}

/** A free region ends above the next region that shares a column with it, and above that one's title. */
function bounded(region: Region, all: readonly Region[]): CellRange {
  const { top, left, right } = region.range;
  const nextTops = all
    .filter((other) => other.sheet === region.sheet && other.range.top > top)
    .filter((other) => other.range.left <= right && other.range.right >= left)
    .map((other) => (titleAbove(other) ? other.range.top - 1 : other.range.top));
  const bottom = Math.min(region.range.bottom, ...nextTops.map((next) => next - 1));
  return { ...region.range, bottom: Math.max(bottom, region.firstRow - 1) };
}

function titleAbove(region: Region): boolean {
  const row = region.range.top - 1;
  if (row < 0) return false;
  const texts = headerCells(region.sheet, row, 1, region.range.left, region.range.right);
  return texts.length === 1 && specNamed((texts[0] as HeaderCell).text) !== null;
}
