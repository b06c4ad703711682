import { CELL, type Grid } from "../workbook/cells";
import type { CellRange, SheetIn, TableIn, WorkbookIn } from "../workbook/workbook";
import { beginsMerged, headerCells, isTall, segmentsOf } from "./header-cells";
import { type HeaderCell, type HeadingDecisions, type HeadingMatch, headingKeys, matchHeadings } from "./headings";
import { TABLES } from "./tables";
import type { TableName, TableSpec } from "./tables/spec";
import { headingKey } from "./words";

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

export type DecidedHeadings = ReadonlyMap<TableName, HeadingDecisions>;

interface Header {
  readonly top: number;
  readonly height: 1 | 2;
  readonly cells: readonly HeaderCell[];
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

/** The table whose headings these are: all that it needs are there. The one that needs most wins. */
export function bestSpec(
  cells: readonly HeaderCell[],
  decided: DecidedHeadings,
): { spec: TableSpec; match: HeadingMatch } | null {
  const fits = TABLES.map((spec) => ({ spec, match: matchHeadings(spec, cells, decided.get(spec.name)) }))
    .filter(({ spec, match }) => match.missing.length === 0 && !hasForbidden(spec, cells))
    .sort((a, b) => needs(b.spec) - needs(a.spec) || b.match.columns.size - a.match.columns.size);
  return fits[0] ?? null;
}

/** The table that carries this name, as Excel tables and sheets are named. */
export function specNamed(name: string): TableSpec | null {
  const key = headingKey(name)
    .replace(/^(tbl|table)(?=.)/, "")
    .replace(/\d+$/, "");
  return TABLES.find((spec) => [spec.name, ...spec.synonyms].some((each) => headingKey(each) === key)) ?? null;
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
    const found = splitHeader(header, decided);
    if (found.length === 0) continue;
    below = header.top + header.height;
    regions.push(...found.map((each) => freeRegion(sheet, sheetIndex, header, each)));
  }
  return regions;
}

interface Found {
  readonly cells: readonly HeaderCell[];
  readonly spec: TableSpec | null;
  readonly match: HeadingMatch | null;
  readonly beside: readonly HeaderCell[];
}

type FoundTable = Omit<Found, "beside">;

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

/** Reads a row of headings alone, and together with the row above or below where cells are merged; the fuller reading counts. */
function bestHeader(sheet: SheetIn, row: number, decided: DecidedHeadings): Header {
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

/** The tables of one row of headings: each run of headings is one, or two without a gap, or all runs together are one. */
function splitHeader(header: Header, decided: DecidedHeadings): Found[] {
  const segments = segmentsOf(header.cells);
  const found = segments.map((cells) => inOnePiece(cells, decided) ?? inTwoPieces(cells, decided));
  const beside = segments.filter((_, i) => found[i] === null).flat();
  if (found.some((each) => each !== null)) {
    return found.flatMap((each) => each ?? []).map((each) => ({ ...each, beside }));
  }
  const whole = bestSpec(header.cells, decided);
  if (whole) return [{ cells: header.cells, ...whole, beside: [] }];
  const possible = segments.filter((cells) => cells.length >= 2 && cells.some((cell) => isChildHeading(cell, decided)));
  return possible.map((cells) => ({ cells, spec: null, match: null, beside: [] }));
}

function inOnePiece(cells: readonly HeaderCell[], decided: DecidedHeadings): FoundTable[] | null {
  const best = bestSpec(cells, decided);
  return best && best.match.twice.length === 0 ? [{ cells, ...best }] : null;
}

/** Two tables without a gap: of the places where both halves are tables, the one that reads most headings. */
function inTwoPieces(cells: readonly HeaderCell[], decided: DecidedHeadings): FoundTable[] | null {
  let most: readonly FoundTable[] = [];
  for (let cut = 1; cut < cells.length; cut += 1) {
    const first = inOnePiece(cells.slice(0, cut), decided);
    const second = first && inOnePiece(cells.slice(cut), decided);
    if (first && second && headingsRead([...first, ...second]) > headingsRead(most)) most = [...first, ...second];
  }
  const best = most.length > 0 ? null : bestSpec(cells, decided);
  return best ? [{ cells, ...best }] : most.length > 0 ? [...most] : null;
}

function headingsRead(tables: readonly FoundTable[]): number {
  return tables.reduce((sum, { match }) => sum + (match?.columns.size ?? 0), 0);
}

function isChildHeading(cell: HeaderCell, decided: DecidedHeadings): boolean {
  const child = TABLES[0]?.columns[0];
  if (!child) return false;
  const names = headingKeys(child);
  return cell.keys.some((key) => names.includes(key) || decided.get("Observations")?.get(key) === "child");
}

/** A sheet has a handful of header rows; one whose cells are full of such words must not slow the reading down. */
const MOST_HEADER_ROWS = 1000;

/** Rows that hold a heading for a child or a skill: every table has one of the two. */
function anchorRows(grid: Grid, decided: DecidedHeadings): number[] {
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

function hasForbidden(spec: TableSpec, cells: readonly HeaderCell[]): boolean {
  const forbidden = (spec.without ?? []).map(headingKey);
  return cells.some((cell) => cell.keys.some((key) => forbidden.includes(key)));
}

function needs(spec: TableSpec): number {
  return spec.columns.filter((column) => column.required).length;
}

function inside(range: CellRange, row: number, column: number): boolean {
  return row >= range.top && row <= range.bottom && column >= range.left && column <= range.right;
}
