import type { CellKind } from "../../../workbook/cells";

/** Takes the cells of a sheet as they arrive. `GridBuilder` keeps them, `GridComparer` compares them. */
export interface CellSink {
  number(row: number, column: number, value: number, kind?: CellKind): void;
  text(row: number, column: number, text: string, kind?: CellKind): void;
}
