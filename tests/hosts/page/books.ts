import { CELL, kindAt, numberAt, stringAt } from "../../../src/workbook/cells";
import { GridBuilder } from "../../../src/workbook/grid-builder";
import type { Grid } from "../../../src/workbook/cells";
import type { WorkbookIn } from "../../../src/workbook/workbook";

/** Every kind of cell there is, with an empty row and an empty column between. */
export function everyKind(): Grid {
  const builder = new GridBuilder();
  ["Child", "Birth date", "Weight"].forEach((heading, column) => builder.text(0, column, heading));
  builder.text(1, 0, "AF-1");
  builder.number(1, 1, 45_000, CELL.date);
  builder.number(1, 2, 3.25);
  builder.text(2, 0, "007");
  builder.number(2, 1, 0, CELL.noCachedValue);
  builder.number(2, 2, 0);
  builder.text(4, 0, "#N/A", CELL.error);
  builder.number(4, 1, 1, CELL.boolean);
  builder.number(4, 4, 0, CELL.boolean);
  builder.text(5, 0, "=1+1");
  builder.text(5, 1, "true");
  return builder.build();
}

export function bookOf(grid: Grid, dateSystem: WorkbookIn["dateSystem"] = 1900): WorkbookIn {
  const range = { top: 0, left: 0, bottom: 2, right: 2 };
  const tables = [{ name: "Children", range, headerRow: true, totalsRow: false }];
  return { dateSystem, sheets: [{ name: "Children", grid, tables, merged: [] }] };
}

/** The cells as kind and content, for comparison. */
export function contentsOf(grid: Grid): unknown[][] {
  return Array.from({ length: grid.rowCount }, (_, row) =>
    Array.from({ length: grid.columns.length }, (_, column) => {
      const kind = kindAt(grid, row, column);
      if (kind === CELL.empty) return null;
      return [
        kind,
        kind === CELL.text || kind === CELL.error ? stringAt(grid, row, column) : numberAt(grid, row, column),
      ];
    }),
  );
}

export const quietly = () => ({ signal: new AbortController().signal, onProgress: () => undefined });
