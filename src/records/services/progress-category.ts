/** a: did not improve functioning; b: improved, not nearer to same-aged peers; c: nearer; d: reached them; e: kept level with them. */
export type ProgressCategory = "a" | "b" | "c" | "d" | "e";

/** Ratings of 6 and 7 stand for functioning as same-aged peers do. */
const AS_PEERS = 6;
const LOWEST = 1;
const HIGHEST = 7;

/**
 * The progress category of an entry and an exit rating. Null where it hangs on whether any skill is new, and that is not
 * known: with a rating that fell, and with two of 1. Equal ratings of 2 to 5 are b without asking.
 *
 * Source: the federal child-outcome indicator of Part C (Indicator 3) and the conversion of ratings that states use for it.
 *
 * @param isNewSinceEntry - null where it is not known
 * @throws {RangeError} when a rating is not a whole number from 1 to 7
 */
export function progressCategory(
  entryRating: number,
  exitRating: number,
  isNewSinceEntry: boolean | null,
): ProgressCategory | null {
  if (![entryRating, exitRating].every((rating) => Number.isInteger(rating) && rating >= LOWEST && rating <= HIGHEST)) {
    throw new RangeError("a rating is a whole number from 1 to 7");
  }
  if (exitRating >= AS_PEERS) return entryRating >= AS_PEERS ? "e" : "d";
  if (exitRating > entryRating) return "c";
  if (exitRating === entryRating && exitRating > LOWEST) return "b";
  if (isNewSinceEntry === null) return null;
  return isNewSinceEntry ? "b" : "a";
}
