import { isoInWords } from "../../release/words/days";

const MONTH =
  "(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)";

const FINE: readonly RegExp[] = [
  /(?<!\d)(?:19|20)\d{2}-(?:0[1-9]|1[0-2])(?:-\d{2})?(?!\d)/,
  /(?<!\d)\d{1,2}[./]\d{1,2}[./](?:19|20)?\d{2}(?!\d)/,
  new RegExp(`\\b\\d{1,2}(?:st|nd|rd|th)?\\s+${MONTH}\\b`, "i"),
  new RegExp(`\\b${MONTH}\\s+\\d{1,2}(?:st|nd|rd|th)?(?:,|\\b(?!\\d))`, "i"),
  new RegExp(`\\b${MONTH}\\s+(?:19|20)\\d{2}\\b`, "i"),
];

/**
 * True where a text holds a date finer than the quarter. The days that the release itself is true for are none of a
 * child's, nor are those in the published sources of windows.
 *
 * @param allowed - texts that may stand, dates and all
 */
export function hasFineDate(text: string, allowed: readonly string[]): boolean {
  const rest = allowed.reduce((left, each) => (each === "" ? left : left.replaceAll(each, " ")), text);
  return FINE.some((pattern) => pattern.test(rest));
}

/** The days of the release, as they are written in its files, and the sources of windows, longest first. */
export function allowedDates(days: readonly string[], sources: readonly string[]): string[] {
  return [...days, ...days.map(isoInWords), ...sources].sort((a, b) => b.length - a.length);
}
