import { type Day, isoOf } from "../src/age/day";
import { serialOf } from "../src/age/serial";
import { currentDateStyle, currentDateSystem } from "./date-system";
import { CellFailure, failureFrom, forHost } from "./failure";

/** A day on its way out: a serial number of the workbook's date system, or ISO text. */
export class DayCell {
  constructor(readonly day: Day) {}
}

/** A cell of an answer, before the host has its way with it; null is blank. */
export type AnswerCell = string | number | boolean | null | DayCell | CellFailure;

/** Runs a worksheet function: its rows as the host shows them, its failure as the host's own error. */
export function inCells(rows: () => readonly (readonly AnswerCell[])[]): any[][] {
  try {
    return rows().map((row) => row.map(shown));
  } catch (thrown) {
    throw forHost(failureFrom(thrown));
  }
}

function shown(cell: AnswerCell): unknown {
  const asJson = currentDateStyle() === "iso";
  if (cell instanceof DayCell) return asJson ? isoOf(cell.day) : serialOf(cell.day, currentDateSystem());
  if (cell instanceof CellFailure) return asJson ? inJsonCell(cell) : forHost(cell);
  return cell === null && !asJson ? "" : cell;
}

function inJsonCell(failure: CellFailure): { error: string; message: string } | null {
  return failure.code === "#N/A" ? null : { error: failure.code, message: failure.message };
}
