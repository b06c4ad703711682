import { calendarOf, type Day, dayOrNull } from "../age/day";
import { type DateSystem, dayFromSerial } from "../age/serial";
import { CELL, type Grid, type GridColumn } from "../workbook/cells";
import { parseDateText, type TextDate } from "./date-text";
import { NO_DAY } from "./records";
import { isBlankText } from "./words";

/** What stands in a column of days where a cell gives none. */
export const DATE_CODE = {
  blank: NO_DAY,
  error: NO_DAY + 1,
  noValue: NO_DAY + 2,
  unreadable: NO_DAY + 3,
  twoDigitYear: NO_DAY + 4,
  orderUnknown: NO_DAY + 5,
  orderContradicts: NO_DAY + 6,
  swapped: NO_DAY + 7,
} as const;

/** The rule of each code, in the order of the codes; a blank has none of its own. */
export const DATE_RULES: readonly string[] = [
  "date-blank",
  "cell-error",
  "cell-no-value",
  "date-unreadable",
  "date-two-digit-year",
  "date-order-unknown",
  "date-order-contradicts",
  "date-column-swapped",
];

export type DateOrder = "day first" | "month first" | "year first";

export interface DateOptions {
  readonly system: DateSystem;
  /** What a person settled for this column; it beats what the column proves. */
  readonly decided: DateOrder | null;
  /** The reading where the column proves nothing; null: not settled. */
  readonly monthFirst: boolean | null;
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

export function isDay(value: number): boolean {
  return value > DATE_CODE.swapped;
}

export function dateRule(code: number): string {
  return DATE_RULES[code - NO_DAY] as string;
}

/** Reads the dates of a column: true dates cell by cell, text dates in the order that the whole column proves. */
export function readDateColumn(grid: Grid, column: number, rows: Int32Array, options: DateOptions): DateColumn {
  const days = new Int32Array(rows.length).fill(NO_DAY);
  const cells = grid.columns[column];
  if (!cells) return { days, swapped: false, timed: [] };
  const texts = new TextDates(grid.strings, options.passOver);
  const timed: number[] = [];
  for (let i = 0; i < rows.length; i += 1) {
    const row = rows[i] as number;
    const kind = cells.kinds[row] ?? CELL.empty;
    const value = cells.values[row] as number;
    if (kind === CELL.number || kind === CELL.date) {
      days[i] = dayOfSerial(value, options.system);
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

type Order = "day first" | "month first" | "contradicts" | "unknown" | "year first";

/** What the two-number dates of a column prove together. */
interface Proof {
  /** Some have a first part over 12. */
  dayFirst: boolean;
  /** Some have a second part over 12. */
  monthFirst: boolean;
  /** Some have neither. */
  open: boolean;
}

/** The texts of one column, each read once. */
class TextDates {
  readonly proof: Proof = { dayFirst: false, monthFirst: false, open: false };
  met = false;
  private readonly read: (TextDate | null | undefined)[] = [];

  constructor(
    private readonly strings: readonly string[],
    private readonly passOver: Uint8Array | undefined,
  ) {}

  /** NO_DAY as long as the order is not known: the second pass settles every text. */
  code(index: number): number {
    if (this.read[index] === undefined) this.read[index] = this.parse(index);
    this.met = true;
    return NO_DAY;
  }

  inOrder(index: number, order: Order): number {
    const date = this.read[index];
    if (!date) return DATE_CODE.blank;
    if (date.kind === "day") return date.day;
    if (date.kind === "two-digit year") return DATE_CODE.twoDigitYear;
    return date.kind === "parts" ? dayOfParts(date.first, date.second, date.year, order) : DATE_CODE.unreadable;
  }

  isTimed(index: number): boolean {
    const date = this.read[index];
    return (date?.kind === "day" || date?.kind === "parts") && date.timed;
  }

  private parse(index: number): TextDate | null {
    const text = this.strings[index] as string;
    if (this.passOver?.[index] === 1 || isBlankText(text)) return null;
    const date = parseDateText(text);
    if (date.kind === "parts") {
      if (date.first > 12) this.proof.dayFirst = true;
      if (date.second > 12) this.proof.monthFirst = true;
      if (date.first <= 12 && date.second <= 12) this.proof.open = true;
    }
    return date;
  }
}

/**
 * A column whose text dates all have one part over 12, beside true dates that all have a day of 12 or less, is what an
 * import with day and month swapped leaves behind: the dates it could read are wrong, the others stayed text.
 */
function orderOf(
  proof: Proof,
  hasLateTrueDay: () => boolean | null,
  options: DateOptions,
): { order: Order; swapped: boolean } {
  if (options.decided !== null) return { order: options.decided, swapped: false };
  if (proof.dayFirst && proof.monthFirst) return { order: "contradicts", swapped: false };
  const proved = proof.dayFirst || proof.monthFirst;
  if (proved && !proof.open && hasLateTrueDay() === false) return { order: "unknown", swapped: true };
  if (proved) return { order: proof.dayFirst ? "day first" : "month first", swapped: false };
  if (options.monthFirst === null) return { order: "unknown", swapped: false };
  return { order: options.monthFirst ? "month first" : "day first", swapped: false };
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

function dayOfParts(first: number, second: number, year: number, order: Order): number {
  if (order === "contradicts") return DATE_CODE.orderContradicts;
  if (order === "unknown" && first !== second) return DATE_CODE.orderUnknown;
  if (order === "year first") return DATE_CODE.unreadable;
  const [month, day] = order === "month first" ? [first, second] : [second, first];
  return dayOrNull(year, month, day) ?? DATE_CODE.unreadable;
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
