/// <reference types="office-js" />
import { HostFailure, type JobOptions } from "../../../workbook/host";
import type { CellRange } from "../../../workbook/workbook";
import { type Patience, readInExcel } from "../run";
import type { CellSink } from "./cell-sink";
import { putCells } from "./put-cells";

/** So many cells come as some 600 KB and are taken in within a few milliseconds. */
const CELLS_AT_ONCE = 20_000;

/** Reads an area slice by slice. A slice whose texts are too long for one reply is read in halves. */
export async function readCells(
  sheetId: string,
  area: CellRange,
  sink: CellSink,
  patience: Patience,
  options: JobOptions,
  onSlice: (cells: number) => void,
): Promise<void> {
  for (const slice of slicesOf(area)) {
    await readSlice(sheetId, slice, sink, patience, options);
    onSlice((slice.bottom - slice.top + 1) * (slice.right - slice.left + 1));
  }
}

function slicesOf({ top, left, bottom, right }: CellRange): CellRange[] {
  const rowsAtOnce = Math.max(1, Math.floor(CELLS_AT_ONCE / (right - left + 1)));
  const slices: CellRange[] = [];
  for (let first = top; first <= bottom; first += rowsAtOnce) {
    slices.push({ top: first, left, bottom: Math.min(bottom, first + rowsAtOnce - 1), right });
  }
  return slices;
}

async function readSlice(
  sheetId: string,
  area: CellRange,
  sink: CellSink,
  patience: Patience,
  options: JobOptions,
): Promise<void> {
  try {
    const block = await fetchBlock(sheetId, area, patience, options);
    putCells(block, area.top, area.left, sink);
  } catch (error) {
    const halves = error instanceof HostFailure && error.kind === "too large" ? halvesOf(area) : null;
    if (!halves) throw error;
    for (const half of halves) await readSlice(sheetId, half, sink, patience, options);
  }
}

function fetchBlock(sheetId: string, area: CellRange, patience: Patience, options: JobOptions) {
  return readInExcel(
    async (context) => {
      const sheet = context.workbook.worksheets.getItem(sheetId);
      const rows = area.bottom - area.top + 1;
      const columns = area.right - area.left + 1;
      const range = sheet.getRangeByIndexes(area.top, area.left, rows, columns);
      range.load("values,valueTypes,numberFormat");
      await context.sync();
      return { values: range.values, valueTypes: range.valueTypes, numberFormat: range.numberFormat };
    },
    patience,
    options,
  );
}

function halvesOf({ top, left, bottom, right }: CellRange): [CellRange, CellRange] | null {
  if (bottom > top) {
    const middle = Math.floor((top + bottom) / 2);
    return [
      { top, left, bottom: middle, right },
      { top: middle + 1, left, bottom, right },
    ];
  }
  if (right === left) return null;
  const middle = Math.floor((left + right) / 2);
  return [
    { top, left, bottom, right: middle },
    { top, left: middle + 1, bottom, right },
  ];
}
