import type { SheetOut } from "../../src/workbook/sheets";
import type { RowsPart, SheetHead } from "./messages";

const CELLS_A_PART = 1000;

export function headOf(sheet: SheetOut): SheetHead {
  return { ...sheet, rows: [], rowHeights: new Map<number, number>() };
}

/** The rows of a sheet in parts that each cross to the pane well within a frame. */
export function* partsOf(sheets: readonly SheetOut[]): Generator<RowsPart> {
  for (const [index, { columns, rows, rowHeights }] of sheets.entries()) {
    const size = Math.max(1, Math.floor(CELLS_A_PART / Math.max(1, columns.length)));
    for (let from = 0; from < rows.length; from += size) {
      const part = rows.slice(from, from + size);
      const heights = part.flatMap((_, at): [number, number][] => {
        const points = rowHeights?.get(from + at);
        return points === undefined ? [] : [[from + at, points]];
      });
      yield { sheet: index, rows: part, heights };
    }
  }
}

/** Puts sheets together again as their parts arrive, in the order in which they were sent. */
export class SheetsInParts {
  private readonly rows: SheetOut["rows"][number][][] = [];
  private readonly heights: Map<number, number>[] = [];

  add({ sheet, rows, heights }: RowsPart): void {
    const have = (this.rows[sheet] ??= []);
    for (const row of rows) have.push(row);
    const known = (this.heights[sheet] ??= new Map());
    for (const [row, points] of heights) known.set(row, points);
  }

  whole(heads: readonly SheetHead[]): SheetOut[] {
    return heads.map((head, index) => ({
      ...head,
      rows: this.rows[index] ?? [],
      rowHeights: this.heights[index] ?? new Map<number, number>(),
    }));
  }
}
