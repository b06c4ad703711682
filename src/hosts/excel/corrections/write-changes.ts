/// <reference types="office-js" />
import { excelValue, type ExcelValue } from "../write/excel-value";
import type { Changes } from "./changes";
import { COLUMNS, type Layout } from "./columns";
import { cellOf } from "./sheet-rows";

/** New rows go below everything, in one assignment, so that none is ever half there; then the single cells. */
export function writeChanges(
  sheet: Excel.Worksheet,
  { cells, added }: Changes,
  layout: Layout,
  values: readonly (readonly unknown[])[],
): void {
  const at = withFurtherHeadings(sheet, { cells, added }, layout);
  if (added.length > 0) {
    const width = Math.max(...at.values()) + 1;
    const byPlace = new Map([...at].map(([key, column]) => [column, key]));
    const block = added.map((row) =>
      Array.from({ length: width }, (_, column) => written(cellOf(row, byPlace.get(column) ?? ""))),
    );
    sheet.getRangeByIndexes(values.length, 0, block.length, width).values = block;
  }
  for (const { row, column, value } of cells) {
    sheet.getRangeByIndexes(row, column, 1, 1).values = [[written(value) ?? ""]];
  }
}

/** A column that a new row needs and the sheet lacks goes right of all others. */
function withFurtherHeadings(sheet: Excel.Worksheet, { added }: Changes, layout: Layout): ReadonlyMap<string, number> {
  const at = new Map(layout.at);
  let next = layout.headings.length;
  for (const { key, heading } of COLUMNS) {
    if (at.has(key) || !added.some((row) => Object.hasOwn(row, key))) continue;
    const cell = sheet.getRangeByIndexes(layout.headingRow, next, 1, 1);
    cell.values = [[written(heading)]];
    cell.format.font.bold = true;
    at.set(key, next);
    next += 1;
  }
  return at;
}

/** Null leaves a cell as it stands: a column of the person's own keeps what is in it. */
function written(value: string | number | null): ExcelValue {
  return excelValue({ value }, 1900);
}
