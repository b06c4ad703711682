import { CELL, type CellKind, type Grid, kindAt, numberAt, stringAt } from "../../../workbook/cells";
import type { CellSink } from "./cell-sink";

/** Compares cells as they arrive with a grid that was read before. */
export class GridComparer implements CellSink {
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
