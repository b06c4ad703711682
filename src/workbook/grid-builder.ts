import { CELL, type CellKind, type Grid, type GridColumn } from "./cells";

/** Fills a grid cell by cell, in any order. Strings are kept once. */
export class GridBuilder {
  private readonly columns: GrowingColumn[] = [];
  private readonly strings: string[] = [];
  private readonly stringIndex = new Map<string, number>();
  private rows = 0;

  number(row: number, column: number, value: number, kind: CellKind = CELL.number): void {
    this.column(column).set(row, kind, value);
    if (row >= this.rows) this.rows = row + 1;
  }

  text(row: number, column: number, text: string, kind: CellKind = CELL.text): void {
    let index = this.stringIndex.get(text);
    if (index === undefined) {
      index = this.strings.push(text) - 1;
      this.stringIndex.set(text, index);
    }
    this.number(row, column, index, kind);
  }

  build(): Grid {
    return { rowCount: this.rows, columns: this.columns.map((column) => column?.trimmed()), strings: this.strings };
  }

  private column(column: number): GrowingColumn {
    return (this.columns[column] ??= new GrowingColumn());
  }
}

/** A grid of plain values, row by row: null and "" are empty, numbers, booleans, text. Error text (`#N/A`) is an error. */
export function gridOf(rows: readonly (readonly unknown[])[]): Grid {
  const builder = new GridBuilder();
  rows.forEach((row, r) => row.forEach((value, c) => putValue(builder, r, c, value)));
  const grid = builder.build();
  return { ...grid, rowCount: Math.max(grid.rowCount, rows.length) };
}

function putValue(builder: GridBuilder, row: number, column: number, value: unknown): void {
  if (typeof value === "number") builder.number(row, column, value);
  else if (typeof value === "boolean") builder.number(row, column, value ? 1 : 0, CELL.boolean);
  else if (typeof value === "string" && value !== "") {
    builder.text(
      row,
      column,
      value,
      /^#(N\/A|VALUE!|REF!|DIV\/0!|NUM!|NAME\?|NULL!)$/.test(value) ? CELL.error : CELL.text,
    );
  }
}

class GrowingColumn {
  private kinds = new Uint8Array(64);
  private values = new Float64Array(64);
  private length = 0;

  set(row: number, kind: CellKind, value: number): void {
    if (row >= this.kinds.length) this.grow(row + 1);
    this.kinds[row] = kind;
    this.values[row] = value;
    if (row >= this.length) this.length = row + 1;
  }

  trimmed(): GridColumn {
    return { kinds: this.kinds.slice(0, this.length), values: this.values.slice(0, this.length) };
  }

  private grow(needed: number): void {
    const size = Math.max(needed, this.kinds.length * 2);
    const kinds = new Uint8Array(size);
    const values = new Float64Array(size);
    kinds.set(this.kinds);
    values.set(this.values);
    this.kinds = kinds;
    this.values = values;
  }
}
