/// <reference types="office-js" />
import type { CellRange } from "../../../workbook/workbook";

export function rangeOf(sheet: Excel.Worksheet, { top, left, bottom, right }: CellRange): Excel.Range {
  return sheet.getRangeByIndexes(top, left, bottom - top + 1, right - left + 1);
}
