import type { SheetIn } from "../../workbook/workbook";
import { shownText } from "../cells/cell-text";
import type { HeaderCell } from "./headings";
import { headingKey } from "../cells/words";

/** The headings in one row, or in two where a merged row of groups stands above. Blank ones are left out. */
export function headerCells(sheet: SheetIn, top: number, height: 1 | 2, left: number, right: number): HeaderCell[] {
  const cells: HeaderCell[] = [];
  for (let column = left; column <= right; column += 1) {
    const texts = height === 1 ? [shownText(sheet.grid, top, column)] : stackedTexts(sheet, top, column);
    const filled = texts.filter((text) => text !== "");
    if (filled.length === 0) continue;
    const row = height === 2 && shownText(sheet.grid, top + 1, column) !== "" ? top + 1 : top;
    cells.push({ row, column, text: filled[filled.length - 1] as string, keys: filled.map(headingKey) });
  }
  return cells;
}

/** True where a merged cell begins in this row, so that the row may be the upper of two header rows. */
export function beginsMerged(sheet: SheetIn, row: number): boolean {
  return sheet.merged.some((merge) => merge.top === row && (merge.bottom === row + 1 || merge.right > merge.left));
}

/** True where the cell is merged with the one below it. */
export function isTall(sheet: SheetIn, row: number, column: number): boolean {
  return sheet.merged.some((merge) => merge.top === row && merge.left === column && merge.bottom > row);
}

/** The text of a cell that stands right above and spans several columns; "" without one. */
export function spanAbove(sheet: SheetIn, row: number, column: number): string {
  const merge = row > 0 ? mergeAt(sheet, row - 1, column) : undefined;
  return merge && merge.right > merge.left ? shownText(sheet.grid, merge.top, merge.left) : "";
}

/** Runs of headings without a gap. */
export function segmentsOf(cells: readonly HeaderCell[]): HeaderCell[][] {
  const segments: HeaderCell[][] = [];
  for (const cell of cells) {
    const last = segments.at(-1);
    if (last && (last.at(-1) as HeaderCell).column === cell.column - 1) last.push(cell);
    else segments.push([cell]);
  }
  return segments;
}

function stackedTexts(sheet: SheetIn, top: number, column: number): string[] {
  const upper = mergedText(sheet, top, column);
  const lower = shownText(sheet.grid, top + 1, column);
  if (lower === "") return [isTallHere(sheet, top, column) ? upper : ""];
  return upper === "" ? [lower] : [`${upper} ${lower}`, lower];
}

function isTallHere(sheet: SheetIn, top: number, column: number): boolean {
  const merge = mergeAt(sheet, top, column);
  return merge === undefined || merge.bottom > top;
}

function mergedText(sheet: SheetIn, row: number, column: number): string {
  const merge = mergeAt(sheet, row, column);
  return merge ? shownText(sheet.grid, merge.top, merge.left) : shownText(sheet.grid, row, column);
}

function mergeAt(sheet: SheetIn, row: number, column: number) {
  return sheet.merged.find(
    (merge) => row >= merge.top && row <= merge.bottom && column >= merge.left && column <= merge.right,
  );
}
