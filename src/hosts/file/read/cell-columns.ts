import { CELL, type CellKind, type Grid, type GridColumn, a1 } from "../../../workbook/cells";
import type { Limits } from "./limits";
import { printable, refuse } from "./unreadable";

/** Fills the typed columns of one sheet, in any order, each cell once, within the limits. */
export class CellColumns {
  private readonly columns: (GrowingColumn | undefined)[] = [];
  private rows = 0;
  private room = 0;

  constructor(
    private readonly sheet: string,
    private readonly limits: Limits,
  ) {}

  set(row: number, column: number, kind: CellKind, value: number): void {
    const target = this.columns[column] ?? this.opened(column);
    if (row >= target.kinds.length) this.grow(target, row + 1);
    if (target.kinds[row] !== CELL.empty) this.refuseTwice(row, column);
    target.kinds[row] = kind;
    target.values[row] = value;
    if (row >= target.length) target.length = row + 1;
    if (row >= this.rows) this.rows = row + 1;
  }

  grid(strings: readonly string[]): Grid {
    const columns = this.columns.map((column) => column && trimmed(column));
    return { rowCount: this.rows, columns, strings };
  }

  private opened(column: number): GrowingColumn {
    const made = { kinds: new Uint8Array(0), values: new Float64Array(0), length: 0 };
    // A hole in the list would become undefined by map, but not by every reader: fill it.
    while (this.columns.length < column) this.columns.push(undefined);
    return (this.columns[column] = made);
  }

  private grow(column: GrowingColumn, needed: number): void {
    const size = Math.max(needed, 64, column.kinds.length * 2);
    this.room += size - column.kinds.length;
    if (this.room > this.limits.cells) {
      refuse(
        `The sheet "${printable(this.sheet)}" has cells spread too far apart to be read: delete the empty rows and columns between them.`,
      );
    }
    const kinds = new Uint8Array(size);
    const values = new Float64Array(size);
    kinds.set(column.kinds);
    values.set(column.values);
    column.kinds = kinds;
    column.values = values;
  }

  private refuseTwice(row: number, column: number): never {
    return refuse(
      `The sheet "${printable(this.sheet)}" gives cell ${a1(row, column)} twice: open the file in Excel and save it again.`,
    );
  }
}

interface GrowingColumn {
  kinds: Uint8Array;
  values: Float64Array;
  length: number;
}

function trimmed(column: GrowingColumn): GridColumn {
  return { kinds: column.kinds.slice(0, column.length), values: column.values.slice(0, column.length) };
}
