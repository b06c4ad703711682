import { CELL, type CellKind, type Grid, kindAt, numberAt, stringAt } from "../../../workbook/cells";
import type { CellSink } from "./cell-sink";
import { HostFailure, type JobOptions } from "../../../workbook/host";
import type { SheetIn, WorkbookIn } from "../../../workbook/workbook";
import type { Patience } from "../run";
import { type Outline, readOutline, type SheetOutline } from "./outline";
import { readCells } from "./read-cells";

/** Fails with "changed meanwhile" unless every sheet that was read still holds the same cells in the same tables. */
export async function checkUnchanged(read: WorkbookIn, patience: Patience, options: JobOptions): Promise<void> {
  const outline = await readOutline(patience, options);
  if (outline.dateSystem !== read.dateSystem) throw changed();
  for (const [done, sheet] of read.sheets.entries()) {
    options.onProgress({ step: "Comparing the records with what was read", done, of: read.sheets.length });
    await checkSheet(sheet, sheetOf(outline, sheet), patience, options);
  }
}

async function checkSheet(sheet: SheetIn, now: SheetOutline, patience: Patience, options: JobOptions): Promise<void> {
  if (!samePlaces(sheet, now)) throw changed();
  const comparer = new GridComparer(sheet.grid);
  await readCells(now.id, now.used, comparer, patience, options, () => {
    if (!comparer.isSameSoFar) throw changed();
  });
  if (!comparer.isSame) throw changed();
}

function sheetOf(outline: Outline, sheet: SheetIn): SheetOutline {
  const now = outline.sheets.find(({ name }) => name === sheet.name);
  if (!now) throw changed();
  return now;
}

function samePlaces(a: SheetIn, b: SheetOutline): boolean {
  return JSON.stringify([a.tables, a.merged]) === JSON.stringify([b.tables, b.merged]);
}

function changed(): HostFailure {
  return new HostFailure(
    "changed meanwhile",
    "The records changed after they were read, so nothing was added. Read the workbook again, then build the report.",
  );
}

/** Compares cells as they arrive with a grid that was read before. */
class GridComparer implements CellSink {
  private seen = 0;
  private differs = false;

  constructor(private readonly grid: Grid) {}

  /** False once one cell is another. */
  get isSameSoFar(): boolean {
    return !this.differs;
  }

  /** To be asked after the last cell. */
  get isSame(): boolean {
    return !this.differs && this.seen === filledCells(this.grid);
  }

  number(row: number, column: number, value: number, kind: CellKind = CELL.number): void {
    this.seen += 1;
    if (kindAt(this.grid, row, column) !== kind || numberAt(this.grid, row, column) !== value) this.differs = true;
  }

  text(row: number, column: number, text: string, kind: CellKind = CELL.text): void {
    this.seen += 1;
    if (kindAt(this.grid, row, column) !== kind || stringAt(this.grid, row, column) !== text) this.differs = true;
  }
}

function filledCells(grid: Grid): number {
  let filled = 0;
  for (const column of grid.columns) {
    for (const kind of column?.kinds ?? []) if (kind !== CELL.empty) filled += 1;
  }
  return filled;
}
