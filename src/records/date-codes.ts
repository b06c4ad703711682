import { NO_DAY } from "./records";

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

export function isDay(value: number): boolean {
  return value > DATE_CODE.swapped;
}

export function dateRule(code: number): string {
  return DATE_RULES[code - NO_DAY] as string;
}
