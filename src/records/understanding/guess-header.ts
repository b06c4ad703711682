import { CELL, kindAt } from "../../workbook/cells";
import type { SheetIn } from "../../workbook/workbook";
import { parseDateText } from "../cells/date-text";
import { beginsMerged, headerCells } from "../headings/header-cells";
import { type HeaderCell, HeadingsSeen } from "../headings/headings";
import { LIKELY, plainWords } from "../headings/likely";

export interface GuessedHeader {
  readonly top: number;
  readonly height: 1 | 2;
  readonly cells: readonly HeaderCell[];
}

const ROWS_LOOKED_AT = 60;
const FEWEST_HEADINGS = 2;
const PATTERNS = Object.values(LIKELY).flatMap((columns) => Object.values(columns).map(({ pattern }) => pattern));

/** The row that looks most like headings: texts that name what stands below, with rows below it; null where there is none. */
export function guessHeader(sheet: SheetIn): GuessedHeader | null {
  let best: GuessedHeader | null = null;
  let most = 0;
  const seen = { 1: new HeadingsSeen(), 2: new HeadingsSeen() };
  for (let row = 0; row < Math.min(ROWS_LOOKED_AT, sheet.grid.rowCount - 1); row += 1) {
    for (const height of beginsMerged(sheet, row) ? ([1, 2] as const) : ([1] as const)) {
      const header = { top: row, height, cells: headerCells(sheet, row, height, 0, sheet.grid.columns.length - 1) };
      // Headings that are said again further down are the same ones: what stands between belongs to them.
      const score = scoreOf(sheet, header);
      if (score === 0 || seen[height].again(header.cells)) continue;
      if (score > most) [best, most] = [header, score];
    }
  }
  return best;
}

function scoreOf(sheet: SheetIn, { top, height, cells }: GuessedHeader): number {
  if (cells.length < FEWEST_HEADINGS) return 0;
  const texts = cells.filter((cell) => isHeadingText(sheet, cell));
  const distinct = new Set(texts.map(({ text }) => plainWords(text))).size;
  if (texts.length * 10 < cells.length * 8) return 0;
  const first = top + height;
  const below = [first, first + 1, first + 2];
  const filledBelow = texts.filter(({ column }) =>
    below.some((row) => kindAt(sheet.grid, row, column) !== CELL.empty),
  ).length;
  const named = texts.filter(({ text }) => PATTERNS.some((pattern) => pattern.test(plainWords(text)))).length;
  const hasChild = texts.some(({ text }) => LIKELY.Children.child?.pattern.test(plainWords(text)) ?? false);
  if (filledBelow === 0) return 0;
  return distinct + filledBelow + 3 * named + (hasChild ? 10 : 0);
}

/** A heading is a text, short, and no date. */
function isHeadingText(sheet: SheetIn, { row, column, text }: HeaderCell): boolean {
  return kindAt(sheet.grid, row, column) === CELL.text && text.length <= 80 && parseDateText(text).kind === "none";
}
