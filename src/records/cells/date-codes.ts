import { NO_DAY } from "../records";

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

/** The order of the parts of a text date, as a person settles it. */
export type DateOrder = "day first" | "month first" | "year first";

/** The order in which the two-number dates of a column are read. */
export type Order = "day first" | "month first" | "contradicts" | "unknown" | "year first";

/** What the two-number dates of a column prove together. */
export interface Proof {
  /** Some have a first part over 12. */
  dayFirst: boolean;
  /** Some have a second part over 12. */
  monthFirst: boolean;
  /** Some have neither. */
  open: boolean;
}

/**
 * A column whose text dates all have one part over 12, beside true dates that all have a day of 12 or less, is what an
 * import with day and month swapped leaves behind: the dates it could read are wrong, the others stayed text.
 */
export function orderOf(
  proof: Proof,
  hasLateTrueDay: () => boolean | null,
  options: { readonly decided: DateOrder | null; readonly monthFirst: boolean | null },
): { order: Order; swapped: boolean } {
  if (options.decided !== null) return { order: options.decided, swapped: false };
  if (proof.dayFirst && proof.monthFirst) return { order: "contradicts", swapped: false };
  const proved = proof.dayFirst || proof.monthFirst;
  if (proved && !proof.open && hasLateTrueDay() === false) return { order: "unknown", swapped: true };
  if (proved) return { order: proof.dayFirst ? "day first" : "month first", swapped: false };
  if (options.monthFirst === null) return { order: "unknown", swapped: false };
  return { order: options.monthFirst ? "month first" : "day first", swapped: false };
}
