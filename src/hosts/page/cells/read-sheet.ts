import { CellValueType, type ICellData } from "@univerjs/core";
import { CELL, type Grid } from "../../../workbook/cells";
import { GridBuilder } from "../../../workbook/grid-builder";
import { NO_RESULT } from "../no-result";
import type { Slices } from "../snapshot/slices";
import { DATE_SHIFT, type DateSystem } from "./date-system";

/** Cells by row and column number, as the grid keeps them. */
export type CellMatrix = Readonly<Record<number, Readonly<Record<number, ICellData | null | void>>>>;

export interface SheetCells {
  readonly own: CellMatrix;
  /** What formulas of other cells put there. */
  readonly spilled: CellMatrix;
  readonly showsDate: (cell: ICellData) => boolean;
}

/** The cells of a sheet of the grid as typed columns, read in slices. */
export async function readSheetCells(cells: SheetCells, dateSystem: DateSystem, slices: Slices): Promise<Grid> {
  const builder = new GridBuilder();
  for (const matrix of [cells.spilled, cells.own]) {
    let rows = 0;
    for (const [row, line] of Object.entries(matrix)) {
      for (const column in line) {
        const cell = line[Number(column)];
        if (cell) putCell(builder, Number(row), Number(column), cell, cells.showsDate, dateSystem);
      }
      rows += 1;
      if (rows % 64 === 0) await slices.rest();
    }
  }
  return builder.build();
}

const ERROR = /^#(N\/A|VALUE!|REF!|DIV\/0!|NUM!|NAME\?|NULL!|SPILL!|CALC!|CONNECT!)$/;

function putCell(
  builder: GridBuilder,
  row: number,
  column: number,
  cell: ICellData,
  showsDate: SheetCells["showsDate"],
  dateSystem: DateSystem,
): void {
  const value = cell.v ?? richText(cell);
  if (value === undefined || value === "") return;
  if (typeof value === "boolean" || cell.t === CellValueType.BOOLEAN) {
    builder.number(row, column, Number(value), CELL.boolean);
  } else if (typeof value === "number") {
    if (showsDate(cell)) builder.number(row, column, value - DATE_SHIFT[dateSystem], CELL.date);
    else builder.number(row, column, value);
  } else if (value === NO_RESULT) builder.number(row, column, 0, CELL.noCachedValue);
  else builder.text(row, column, value, ERROR.test(value) ? CELL.error : CELL.text);
}

/** A cell with several fonts in it keeps its text elsewhere, closed by a paragraph mark. */
function richText(cell: ICellData): string | undefined {
  return cell.p?.body?.dataStream.replace(/\r\n$/, "").replace(/\r/g, "\n");
}
