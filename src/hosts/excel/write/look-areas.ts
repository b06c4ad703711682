import type { CellFormat, CellOut, CellStyle, ColumnOut, SheetOut } from "../../../workbook/sheets";
import type { CellRange } from "../../../workbook/workbook";
import { wholeCell } from "./excel-value";

/** A rectangle of cells that look the same. */
export interface LookArea {
  readonly area: CellRange;
  readonly style: CellStyle | undefined;
  /** Of cells that hold numbers. */
  readonly format: CellFormat | undefined;
}

interface Run {
  readonly left: number;
  right: number;
  readonly style: CellStyle | undefined;
  readonly format: CellFormat | undefined;
}

interface Open extends Run {
  readonly top: number;
}

/** The cells of rows `top` to `bottom` that have a look, as few rectangles: equal runs below each other are one. */
export function lookAreas(sheet: SheetOut, top: number, bottom: number): LookArea[] {
  const done: LookArea[] = [];
  let open = new Map<string, Open>();
  for (let row = top; row <= bottom; row += 1) {
    const still = new Map<string, Open>();
    for (const run of runsOf(sheet.rows[row] ?? [], sheet.columns)) {
      const key = `${run.left}-${run.right} ${run.style} ${run.format}`;
      still.set(key, open.get(key) ?? { ...run, top: row });
      open.delete(key);
    }
    open.forEach((each) => done.push(closed(each, row - 1)));
    open = still;
  }
  open.forEach((each) => done.push(closed(each, bottom)));
  return done;
}

function closed({ left, right, top, style, format }: Open, bottom: number): LookArea {
  return { area: { top, left, bottom, right }, style, format };
}

/** Neighbours in a row that look the same. */
function runsOf(cells: readonly CellOut[], columns: readonly ColumnOut[]): Run[] {
  const runs: Run[] = [];
  for (const [column, cell] of cells.entries()) {
    const { style, format } = lookOf(cell, columns[column]);
    if (style === undefined && format === undefined) continue;
    const last = runs.at(-1);
    if (last && last.right === column - 1 && last.style === style && last.format === format) last.right = column;
    else runs.push({ left: column, right: column, style, format });
  }
  return runs;
}

/** An empty cell looks like its column, so that it does not break a column of figures into many pieces. */
function lookOf(cell: CellOut, column: ColumnOut | undefined): Pick<Run, "style" | "format"> {
  const { value, style, format } = wholeCell(cell, column);
  return { style, format: typeof value === "number" || cell === null ? format : undefined };
}
