import { calendarOf, type Day } from "../../age/day";
import { type DateSystem, dayFromSerial } from "../../age/serial";
import { CELL, type Grid, type GridColumn } from "../../workbook/cells";
import { DATE_CODE, type DateOrder, isDay, orderOf } from "./date-codes";
import { NO_DAY } from "../records";
import { TextDates } from "./date-text";

/** 1 January 1960, in days since 1970: a serial number of about 22,000. */
const EARLIEST_BARE_NUMBER = -3653;

export interface DateOptions {
  readonly system: DateSystem;
  /** What a person settled for this column; it beats what the column proves. */
  readonly decided: DateOrder | null;
  /** The reading where the column proves nothing; null: not settled. */
  readonly monthFirst: boolean | null;
  /** Years of two digits are of this century, as a person said; else such dates are not read. */
  readonly shortYears?: boolean;
  /** By string of the grid: 1 where a text is something other than a date and is to be passed over. */
  readonly passOver?: Uint8Array;
}

export interface DateColumn {
  /** One entry a row asked for: a day, or a code. */
  readonly days: Int32Array;
  /** The column shows the sign of swapped day and month: no cell of it is used. */
  readonly swapped: boolean;
  /** Positions in `rows` of the dates whose time of day was dropped. */
  readonly timed: readonly number[];
}

/** Reads the dates of a column: true dates cell by cell, text dates in the order that the whole column proves. */
export function readDateColumn(grid: Grid, column: number, rows: Int32Array, options: DateOptions): DateColumn {
  const days = new Int32Array(rows.length).fill(NO_DAY);
  const cells = grid.columns[column];
  if (!cells) return { days, swapped: false, timed: [] };
  const texts = new TextDates(grid.strings, options.passOver, options.shortYears === true);
  const timed: number[] = [];
  for (let i = 0; i < rows.length; i += 1) {
    const row = rows[i] as number;
    const kind = cells.kinds[row] ?? CELL.empty;
    const value = cells.values[row] as number;
    if (kind === CELL.number || kind === CELL.date) {
      days[i] = dayOfSerial(value, options.system);
      // A bare number of long ago is a count, an age or a year, and no date of a child.
      if (kind === CELL.number && isDay(days[i] as number) && (days[i] as number) < EARLIEST_BARE_NUMBER)
        days[i] = DATE_CODE.unreadable;
      if (value % 1 !== 0 && isDay(days[i] as number)) timed.push(i);
    } else if (kind === CELL.text) days[i] = texts.code(value);
    else if (kind !== CELL.empty) days[i] = codeOfKind(kind);
  }
  if (!texts.met) return { days, swapped: false, timed };
  const { order, swapped } = orderOf(texts.proof, () => hasLateTrueDay(cells, rows, days), options);
  if (swapped) return { days: days.fill(DATE_CODE.swapped), swapped, timed: [] };
  for (let i = 0; i < rows.length; i += 1) {
    const row = rows[i] as number;
    if (cells.kinds[row] !== CELL.text) continue;
    const text = cells.values[row] as number;
    days[i] = texts.inOrder(text, order);
    if (texts.isTimed(text) && isDay(days[i] as number)) timed.push(i);
  }
  return { days, swapped: false, timed };
}

/** Whether a true date has a day over 12; null where there is no true date. */
function hasLateTrueDay(cells: GridColumn, rows: Int32Array, days: Int32Array): boolean | null {
  let late: boolean | null = null;
  for (let i = 0; i < rows.length; i += 1) {
    const day = days[i] as number;
    if (!isDay(day) || cells.kinds[rows[i] as number] === CELL.text) continue;
    if (calendarOf(day).dayOfMonth > 12) return true;
    late = false;
  }
  return late;
}

/** A serial of 0 is a blank: some hosts hand an empty cell over as 0. */
function dayOfSerial(serial: number, system: DateSystem): Day {
  if (serial === 0) return NO_DAY;
  return (serial < 1 ? null : dayFromSerial(serial, system)) ?? DATE_CODE.unreadable;
}

function codeOfKind(kind: number): number {
  if (kind === CELL.error) return DATE_CODE.error;
  return kind === CELL.noCachedValue ? DATE_CODE.noValue : DATE_CODE.unreadable;
}
