import type { CellOut, ChartOut, SheetOut } from "../../../workbook/sheets";
import type { CellRange } from "../../../workbook/workbook";
import { columnPixels } from "./sizes";

const USUAL_ROW_PIXELS = 20;
const USUAL_COLUMN_CHARACTERS = 8.43;
const PIXELS_PER_POINT = 4 / 3;
const LINE_POINTS = 15;
const TALLEST_ROW_POINTS = 409;

/**
 * The sheet with each chart's message in the first free cells below it, merged to the chart's breadth: Office.js has no
 * alternative text for charts, and a screen reader finds cells.
 */
export function withChartSentences(sheet: SheetOut): SheetOut {
  const charts = sheet.charts ?? [];
  if (charts.length === 0) return sheet;
  const covered = charts.map((chart) => coveredBy(chart, sheet));
  const rows = sheet.rows.map((row) => [...row]);
  const merged = [...(sheet.merged ?? [])];
  const rowHeights = new Map(sheet.rowHeights);
  charts.forEach((chart, index) => {
    const place = freeBelow(covered[index] as CellRange, rows, [...merged, ...covered]);
    putCell(rows, place, { value: chart.altText, style: "note" });
    if (place.right > place.left) merged.push(place);
    rowHeights.set(place.top, Math.max(rowHeights.get(place.top) ?? 0, heightOf(chart.altText, place, sheet)));
  });
  return { ...sheet, rows, merged, rowHeights };
}

/** The cells that a chart hides. */
function coveredBy({ at, widthPixels, heightPixels }: ChartOut, sheet: SheetOut): CellRange {
  let bottom = at.row;
  for (let left = heightPixels - rowPixels(sheet, bottom); left > 0; left -= rowPixels(sheet, bottom)) bottom += 1;
  let right = at.column;
  for (let left = widthPixels - breadth(sheet, right); left > 0; left -= breadth(sheet, right)) right += 1;
  return { top: at.row, left: at.column, bottom, right };
}

function rowPixels({ rowHeights }: SheetOut, row: number): number {
  const points = rowHeights?.get(row);
  return points === undefined ? USUAL_ROW_PIXELS : Math.max(1, points * PIXELS_PER_POINT);
}

function breadth({ columns }: SheetOut, column: number): number {
  return Math.max(1, columnPixels(columns[column]?.width ?? USUAL_COLUMN_CHARACTERS));
}

function freeBelow(chart: CellRange, rows: readonly CellOut[][], taken: readonly CellRange[]): CellRange {
  for (let top = chart.bottom + 1; ; top += 1) {
    const place = { top, left: chart.left, bottom: top, right: chart.right };
    const cells = rows[top]?.slice(place.left, place.right + 1) ?? [];
    if (cells.every((cell) => cell === null) && !taken.some((each) => overlaps(each, place))) return place;
  }
}

function overlaps(a: CellRange, b: CellRange): boolean {
  return a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;
}

function putCell(rows: CellOut[][], { top, left }: CellRange, cell: CellOut): void {
  while (rows.length <= top) rows.push([]);
  const row = rows[top] as CellOut[];
  while (row.length <= left) row.push(null);
  row[left] = cell;
}

function heightOf(text: string, { left, right }: CellRange, { columns }: SheetOut): number {
  const widths = Array.from(
    { length: right - left + 1 },
    (_, i) => columns[left + i]?.width ?? USUAL_COLUMN_CHARACTERS,
  );
  const characters = widths.reduce((sum, width) => sum + width, 0);
  return Math.min(TALLEST_ROW_POINTS, Math.ceil(text.length / characters) * LINE_POINTS + 3);
}
