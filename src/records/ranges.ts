import type { DateSystem } from "../age/serial";
import { gridOf } from "../workbook/grid-builder";
import type { SheetIn, WorkbookIn } from "../workbook/workbook";

/** Table arguments of worksheet functions: each a range with its header row. */
export interface TableRanges {
  readonly children?: readonly (readonly unknown[])[] | undefined;
  readonly observations?: readonly (readonly unknown[])[] | undefined;
  readonly skills?: readonly (readonly unknown[])[] | undefined;
  readonly referrals?: readonly (readonly unknown[])[] | undefined;
}

/**
 * The workbook that a function's table arguments stand for: a sheet and a table for each, named as the table is. Rows
 * are numbered as in the argument, with the header as row 1.
 */
export function workbookOfRanges(ranges: TableRanges, dateSystem: DateSystem): WorkbookIn {
  const named: [name: string, rows: readonly (readonly unknown[])[] | undefined][] = [
    ["Children", ranges.children],
    ["Observations", ranges.observations],
    ["Skills", ranges.skills],
    ["Referrals", ranges.referrals],
  ];
  return {
    dateSystem,
    sheets: named.flatMap(([name, rows]) => (rows && rows.length > 0 ? [sheetOf(name, rows)] : [])),
  };
}

function sheetOf(name: string, rows: readonly (readonly unknown[])[]): SheetIn {
  const right = rows.reduce((most, row) => Math.max(most, row.length), 1) - 1;
  const range = { top: 0, left: 0, bottom: rows.length - 1, right };
  return { name, grid: gridOf(rows), tables: [{ name, range, headerRow: true, totalsRow: false }], merged: [] };
}
