import { UTCDate } from "@date-fns/utc";
import { isValid, parse } from "date-fns";
import { enUS } from "date-fns/locale/en-US";
import { es } from "date-fns/locale/es";
import { type Day, dayOrNull } from "../../age/day";
import { displayOf, isBlankText } from "./words";
import { DATE_CODE, type Order, type Proof } from "./date-codes";
import { NO_DAY } from "../records";

/** What one text says about a date, before its column is known. */
export type TextDate =
  | { readonly kind: "day"; readonly day: Day; readonly timed: boolean }
  /** Two numbers and a year: either may be the day. */
  | {
      readonly kind: "parts";
      readonly first: number;
      readonly second: number;
      readonly year: number;
      readonly timed: boolean;
    }
  /** `full`: what it says with a year from 2000 to 2099. */
  | { readonly kind: "two-digit year"; readonly full: TextDate }
  | { readonly kind: "none" };

/** Children in a program for infants and toddlers, and all that is recorded of them, are of this century. */
const CENTURY = 2000;

const NONE: TextDate = { kind: "none" };
const TIME = /(?:T|\s+)(\d{1,2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?\s*(?:[AaPp]\.?[Mm]\.?)?\s*(?:Z|[+-]\d{2}:?\d{2})?$/;
const YEAR_FIRST = /^(\d{4})\s*([-/.])\s*(\d{1,2})\s*\2\s*(\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})\s*([-/.]|\s)\s*(\d{1,2})\s*\2\s*(\d{4})$/;
const SHORT_YEAR = /^(\d{1,2})\s*([-/.]|\s)\s*(\d{1,2})\s*\2\s*'?(\d{2})$/;
const DAY_AND_NAME =
  /^(\d{1,2})(?:st|nd|rd|th)?[\s\-/.,]*(?:de\s+)?([a-z]{3,10})[\s\-/.,]*(?:del?\s+)?('?\d{2}|\d{4})$/i;
const NAME_AND_DAY = /^([a-z]{3,9})[\s\-/.,]*(\d{1,2})(?:st|nd|rd|th)?[\s\-/.,]+('?\d{2}|\d{4})$/i;

/** Reads a text date: ISO, year first, two numbers and a year, or a month's English name. */
export function parseDateText(cell: string): TextDate {
  const text = displayOf(cell);
  const time = TIME.exec(text);
  const date = time ? text.slice(0, time.index) : text;
  const timed = time !== null && /[1-9]/.test(time.slice(1).join(""));
  const year = YEAR_FIRST.exec(date);
  if (year) return whole(Number(year[1]), Number(year[3]), Number(year[4]), timed);
  const parts = YEAR_LAST.exec(date);
  if (parts) {
    return { kind: "parts", first: Number(parts[1]), second: Number(parts[3]), year: Number(parts[4]), timed };
  }
  const short = SHORT_YEAR.exec(date);
  if (!short) return named(date, timed);
  const full = { first: Number(short[1]), second: Number(short[3]), year: CENTURY + Number(short[4]), timed };
  return { kind: "two-digit year", full: { kind: "parts", ...full } };
}

function named(date: string, timed: boolean): TextDate {
  const dayFirst = DAY_AND_NAME.exec(date);
  const nameFirst = dayFirst ? null : NAME_AND_DAY.exec(date);
  if (!dayFirst && !nameFirst) return NONE;
  const [day, name, year] = (
    dayFirst ? [dayFirst[1], dayFirst[2], dayFirst[3]] : [nameFirst?.[2], nameFirst?.[1], nameFirst?.[3]]
  ) as [string, string, string];
  const month = monthNamed(name);
  if (month === null) return NONE;
  if (year.length === 4) return whole(Number(year), month, Number(day), timed);
  return { kind: "two-digit year", full: whole(CENTURY + Number(year.slice(-2)), month, Number(day), timed) };
}

/** 1 to 12, by an English or Spanish month name or its first three letters. */
function monthNamed(name: string): number | null {
  const word = name.toLowerCase() === "sept" ? "sep" : name;
  for (const locale of [enUS, es]) {
    for (const form of ["MMMM", "MMM"]) {
      const date = parse(word, form, new UTCDate(0), { locale });
      if (isValid(date)) return date.getUTCMonth() + 1;
    }
  }
  return null;
}

function whole(year: number, month: number, dayOfMonth: number, timed: boolean): TextDate {
  const day = dayOrNull(year, month, dayOfMonth);
  return day === null ? NONE : { kind: "day", day, timed };
}

/** The texts of one column, each read once. */
export class TextDates {
  readonly proof: Proof = { dayFirst: false, monthFirst: false, open: false };
  met = false;
  private readonly read: (TextDate | null | undefined)[] = [];

  constructor(
    private readonly strings: readonly string[],
    private readonly passOver: Uint8Array | undefined,
    private readonly readsShortYears: boolean,
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

  private whole(date: TextDate): TextDate {
    return date.kind === "two-digit year" && this.readsShortYears ? date.full : date;
  }

  private parse(index: number): TextDate | null {
    const text = this.strings[index] as string;
    if (this.passOver?.[index] === 1 || isBlankText(text)) return null;
    const date = this.whole(parseDateText(text));
    if (date.kind === "parts") {
      if (date.first > 12) this.proof.dayFirst = true;
      if (date.second > 12) this.proof.monthFirst = true;
      if (date.first <= 12 && date.second <= 12) this.proof.open = true;
    }
    return date;
  }
}

function dayOfParts(first: number, second: number, year: number, order: Order): number {
  if (order === "contradicts") return DATE_CODE.orderContradicts;
  if (order === "unknown" && first !== second) return DATE_CODE.orderUnknown;
  if (order === "year first") return DATE_CODE.unreadable;
  const [month, day] = order === "month first" ? [first, second] : [second, first];
  return dayOrNull(year, month, day) ?? DATE_CODE.unreadable;
}
