import type { ReleasedReader, ReleasedRow } from "./read-released";
import { isoInWords } from "./days";
import { levelText } from "./share-words";
import type { WordsContext } from "./words-context";

/** Referrals with the time they came from, and what the program's own rates by age would give. */
export function referralSentence(read: ReleasedReader, row: ReleasedRow, context: WordsContext): string | null {
  const referrals = read.count(row, "referrals");
  if (referrals === null) return null;
  const where = `${read.text(row, "dimension")} ${read.text(row, "value") || "not recorded"}`;
  return `${where}: ${referrals} referrals between ${isoInWords(context.from)} and ${isoInWords(context.asOf)}${timeOf(read, row)}${expectedOf(read, row, context.level)}.`;
}

function timeOf(read: ReleasedReader, row: ReleasedRow): string {
  const months = read.number(row, "childMonths");
  if (months === null) return "";
  const rate = read.number(row, "per100ChildMonths");
  const per = rate === null ? "" : ` (${atMost(rate, 2)} per 100 child-months)`;
  return `, in ${atMost(months, 1)} child-months${per}`;
}

function expectedOf(read: ReleasedReader, row: ReleasedRow, level: number): string {
  const [expected, ratio, lower, upper] = ["expected", "ratio", "lower", "upper"].map((key) => read.number(row, key));
  if (typeof expected !== "number" || typeof ratio !== "number") return "";
  const limits =
    typeof lower === "number" && typeof upper === "number"
      ? ` (${levelText(level)} confidence interval ${atMost(lower, 2)} to ${atMost(upper, 2)})`
      : "";
  return `. At the program's own rates by age, ${atMost(expected, 1)} were expected, a ratio of ${atMost(ratio, 2)}${limits}`;
}

/** No more places than the figure has: a release rounds some, and a sentence must not pretend to more. */
function atMost(value: number, places: number): string {
  return String(Number(value.toFixed(places)));
}
