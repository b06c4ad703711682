/// <reference types="office-js" />
import type { SheetOut } from "../../../workbook/sheets";
import type { Step } from "./steps";

const POINTS_PER_PIXEL = 0.75;
/** Of a figure in the usual font, Calibri or Aptos 11. */
const PIXELS_PER_CHARACTER = 7;
const CELL_PADDING_PIXELS = 5;

/** Column widths and row heights. Office.js takes both in points. */
export function sizeSteps({ columns, rowHeights }: SheetOut): Step[] {
  const widths = columns.map(({ width }, column) => (sheet: Excel.Worksheet) => {
    sheet.getRangeByIndexes(0, column, 1, 1).format.columnWidth = columnPoints(width);
  });
  const heights = [...(rowHeights ?? [])].map(([row, points]) => (sheet: Excel.Worksheet) => {
    sheet.getRangeByIndexes(row, 0, 1, 1).format.rowHeight = points;
  });
  return [...widths, ...heights];
}

/** Source: ECMA-376 Part 1, 18.3.1.13 (`width`), for a font whose widest figure has 7 pixels. */
export function columnPixels(characters: number): number {
  return Math.trunc(characters * PIXELS_PER_CHARACTER + CELL_PADDING_PIXELS);
}

function columnPoints(characters: number): number {
  return columnPixels(characters) * POINTS_PER_PIXEL;
}
