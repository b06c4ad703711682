import { matchHeadings } from "../../records/headings/headings";
import { headerCells } from "../../records/headings/header-cells";
import { specNamed } from "../../records/headings/table-match";
import { CELL, type Grid, type GridColumn } from "../../workbook/cells";
import type { SheetIn, TableIn } from "../../workbook/workbook";

/** Columns of text that grow row by row: each text is kept once, each cell is a number. */
export class TextColumns {
  private readonly strings: string[] = [];
  private readonly indexOf = new Map<string, number>();
  private readonly columns: Float64Array[];
  private room = 1 << 12;
  rowCount = 0;

  constructor(private readonly width: number) {
    this.columns = Array.from({ length: width }, () => new Float64Array(this.room).fill(BLANK));
  }

  /** A row of texts; null, undefined and "" are empty cells. */
  addRow(texts: readonly (string | null | undefined)[]): void {
    this.reserve(1);
    for (let column = 0; column < this.width; column += 1) this.put(column, this.rowCount, texts[column]);
    this.rowCount += 1;
  }

  /** Rows that stand column by column. */
  addChunk(chunk: readonly (readonly (string | null)[])[], rows: number): void {
    this.reserve(rows);
    chunk.forEach((texts, column) => {
      for (let row = 0; row < rows; row += 1) this.put(column, this.rowCount + row, texts[row]);
    });
    this.rowCount += rows;
  }

  /** Puts in empty rows, so that they then have the places given, in rising order. */
  openRows(places: readonly number[]): void {
    this.reserve(places.length);
    const last = this.rowCount + places.length - 1;
    for (const column of this.columns) {
      let from = this.rowCount - 1;
      let next = places.length - 1;
      for (let to = last; to >= 0; to -= 1) {
        const isOpened = places[next] === to;
        column[to] = isOpened ? BLANK : (column[from] as number);
        if (isOpened) next -= 1;
        else from -= 1;
      }
    }
    this.rowCount += places.length;
  }

  /** A sheet of these columns, a table from its first row of headings on where its name says which. */
  sheet(name: string): SheetIn {
    const grid: Grid = {
      rowCount: this.rowCount,
      columns: this.columns.map((c) => this.built(c)),
      strings: this.strings,
    };
    const sheet = { name, grid, tables: [], merged: [] };
    return { ...sheet, tables: tableNamed(sheet) };
  }

  private put(column: number, row: number, text: string | null | undefined): void {
    if (text === null || text === undefined || text === "") return;
    let index = this.indexOf.get(text);
    if (index === undefined) {
      index = this.strings.push(text) - 1;
      this.indexOf.set(text, index);
    }
    (this.columns[column] as Float64Array)[row] = index;
  }

  private reserve(more: number): void {
    if (this.rowCount + more <= this.room) return;
    while (this.rowCount + more > this.room) this.room *= 2;
    this.columns.forEach((column, at) => {
      const wider = new Float64Array(this.room).fill(BLANK, column.length);
      wider.set(column);
      this.columns[at] = wider;
    });
  }

  private built(column: Float64Array): GridColumn {
    const values = column.subarray(0, this.rowCount);
    const kinds = new Uint8Array(this.rowCount);
    for (let row = 0; row < this.rowCount; row += 1) kinds[row] = values[row] === BLANK ? CELL.empty : CELL.text;
    return { kinds, values };
  }
}

const BLANK = -1;

/** `observations`, `children-north` and `Referrals 2026` are named after their tables; that helps only where the headings agree. */
function tableNamed(sheet: SheetIn): TableIn[] {
  const { grid, name } = sheet;
  const spec = specNamed(name) ?? specNamed(name.split(/[-_ .]/, 1)[0] as string);
  const right = grid.columns.length - 1;
  if (!spec || grid.rowCount === 0) return [];
  const match = matchHeadings(spec, headerCells(sheet, 0, 1, 0, right));
  if (match.missing.length > 0) return [];
  const range = { top: 0, left: 0, bottom: grid.rowCount - 1, right };
  return [{ name: spec.name, range, headerRow: true, totalsRow: false }];
}
