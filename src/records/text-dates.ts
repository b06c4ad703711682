import { dayOrNull } from "../age/day";
import { DATE_CODE } from "./date-codes";
import type { Order, Proof } from "./date-order";
import { parseDateText, type TextDate } from "./date-text";
import { NO_DAY } from "./records";
import { isBlankText } from "./words";

/** The texts of one column, each read once. */
export class TextDates {
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

function dayOfParts(first: number, second: number, year: number, order: Order): number {
  if (order === "contradicts") return DATE_CODE.orderContradicts;
  if (order === "unknown" && first !== second) return DATE_CODE.orderUnknown;
  if (order === "year first") return DATE_CODE.unreadable;
  const [month, day] = order === "month first" ? [first, second] : [second, first];
  return dayOrNull(year, month, day) ?? DATE_CODE.unreadable;
}
