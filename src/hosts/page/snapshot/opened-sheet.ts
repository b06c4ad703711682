import { BooleanNumber, CellValueType, type ICellData, type IWorksheetData } from "@univerjs/core";
import { CELL, type Grid, kindAt, numberAt, stringAt } from "../../../workbook/cells";
import type { SheetIn } from "../../../workbook/workbook";
import { DATE_SHIFT, type DateSystem } from "../cells/date-system";
import { NO_RESULT } from "../no-result";
import { columnPixels, SPARE } from "./sizes";
import type { Slices } from "./slices";

export const STYLE_IDS = { date: "date", header: "header", dateInHeader: "date-in-header" } as const;

const ROWS_MEASURED = 200;
const WIDEST_CHARACTERS = 22;
const NARROWEST_CHARACTERS = 8;

type Matrix = Record<number, Record<number, ICellData>>;

/** A sheet of an opened workbook as the grid holds it, made in slices. */
export async function openedSheet(
  id: string,
  sheet: SheetIn,
  dateSystem: DateSystem,
  slices: Slices,
): Promise<Partial<IWorksheetData>> {
  const { grid } = sheet;
  const headers = headerCells(sheet);
  const cellData: Matrix = {};
  for (let row = 0; row < grid.rowCount; row += 1) {
    const cells = rowCells(grid, row, headers.has(row), dateSystem);
    if (cells) cellData[row] = cells;
    if (row % 64 === 0) await slices.rest();
  }
  return {
    id,
    name: sheet.name,
    cellData,
    rowCount: Math.max(grid.rowCount + SPARE.rows, SPARE.leastRows),
    columnCount: Math.max(grid.columns.length + SPARE.columns, SPARE.leastColumns),
    columnData: widths(sheet),
    mergeData: sheet.merged.map((range) => ({
      startRow: range.top,
      startColumn: range.left,
      endRow: range.bottom,
      endColumn: range.right,
    })),
    showGridlines: BooleanNumber.TRUE,
    ...frozenBelow(headers),
  };
}

function rowCells(
  grid: Grid,
  row: number,
  isHeader: boolean,
  dateSystem: DateSystem,
): Record<number, ICellData> | null {
  let cells: Record<number, ICellData> | null = null;
  for (let column = 0; column < grid.columns.length; column += 1) {
    const cell = cellAt(grid, row, column, dateSystem);
    if (!cell) continue;
    if (isHeader) cell.s = cell.s === STYLE_IDS.date ? STYLE_IDS.dateInHeader : STYLE_IDS.header;
    (cells ??= {})[column] = cell;
  }
  return cells;
}

function cellAt(grid: Grid, row: number, column: number, dateSystem: DateSystem): ICellData | null {
  switch (kindAt(grid, row, column)) {
    case CELL.empty:
      return null;
    case CELL.number:
      return { v: numberAt(grid, row, column), t: CellValueType.NUMBER };
    case CELL.date:
      return {
        v: numberAt(grid, row, column) + DATE_SHIFT[dateSystem],
        t: CellValueType.NUMBER,
        s: STYLE_IDS.date,
      };
    case CELL.boolean:
      return { v: numberAt(grid, row, column), t: CellValueType.BOOLEAN };
    case CELL.noCachedValue:
      return { v: NO_RESULT, t: CellValueType.STRING };
    default:
      return { v: stringAt(grid, row, column), t: CellValueType.STRING };
  }
}

/** Rows that head a table of the workbook. */
function headerCells({ tables }: SheetIn): ReadonlySet<number> {
  return new Set(tables.filter(({ headerRow }) => headerRow).map(({ range }) => range.top));
}

function frozenBelow(headers: ReadonlySet<number>): Partial<IWorksheetData> {
  const [top] = headers;
  if (headers.size !== 1 || top === undefined || top > 10) return {};
  return { freeze: { xSplit: 0, ySplit: top + 1, startRow: top + 1, startColumn: -1 } };
}

function widths({ grid, merged }: SheetIn): Record<number, { w: number }> {
  const columns: Record<number, { w: number }> = {};
  const wide = new Set(merged.filter(({ left, right }) => right > left).map(({ top, left }) => `${top} ${left}`));
  for (let column = 0; column < grid.columns.length; column += 1) {
    columns[column] = { w: columnPixels(charactersOf(grid, column, wide) + 3) };
  }
  return columns;
}

/** A text with nothing to its right runs on over the empty cells there, and a merged one has columns of its own to fill. */
function charactersOf(grid: Grid, column: number, wide: ReadonlySet<string>): number {
  let most = NARROWEST_CHARACTERS;
  for (let row = 0; row < Math.min(grid.rowCount, ROWS_MEASURED); row += 1) {
    const runsOn = kindAt(grid, row, column + 1) === CELL.empty || wide.has(`${row} ${column}`);
    if (!runsOn) most = Math.max(most, stringAt(grid, row, column).length);
  }
  return Math.min(most, WIDEST_CHARACTERS);
}
