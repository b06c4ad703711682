import type { Ledger } from "../release/ledger";
import type { PreparedRelease } from "../release/prepared";
import { boundBy, ledgerInWords, lostToEarlier } from "../release/words/ledger-in-words";
import type { WordsContext } from "../release/words/words-context";
import { listLines } from "./release-summary";

/** What was released before, and what that and this release take from figures: said before anything is made. */
export function planLines(
  release: PreparedRelease,
  alone: PreparedRelease | null,
  context: WordsContext,
  ledger: Ledger,
): string[] {
  const lost = alone === null ? [] : lostToEarlier(release, alone, context);
  return [
    ...releasedBefore(ledger),
    ...(lost.length === 0
      ? ["Because of earlier releases, this one loses no figure."]
      : listLines("Because of earlier releases, this one can no longer show:", lost)),
    boundBy(release),
    "Nothing was written. Leave out --plan to make the release.",
  ];
}

export function releasedBefore(ledger: Ledger): string[] {
  const lines = ledgerInWords(ledger);
  return lines.length === 0 ? ["Released before: nothing."] : listLines("Released before:", lines);
}
