/** a: gained nothing; b: gained, not nearer to children of the same age; c: nearer; d: reached them; e: with them all along. */
export type ProgressCategory = "a" | "b" | "c" | "d" | "e";

/** The category of two levels, where a blank answer to "Gained any skill" may leave it open between two. */
export type CategoryOrOpen = ProgressCategory | "a or b";

/** A program's own scale of outcome levels. */
export interface RatingScale {
  /** Levels go from 1 to this. */
  readonly levels: number;
  /** The lowest level that means: as children of the same age. */
  readonly peerLevel: number;
}

const LOWEST = 1;

/**
 * The progress category of an entry and an exit level, by their order and by whether any skill was gained.
 *
 * Source: the federal child-outcome indicator of Part C (Indicator 3), whose conversion of ratings states hand out; here on
 * a scale of any number of levels.
 *
 * @param gainedAnySkill - null where it is not known
 * @throws {RangeError} when a level is not a whole number of the scale, or the scale has no level below its peers
 */
export function progressCategory(
  entryLevel: number,
  exitLevel: number,
  gainedAnySkill: boolean | null,
  { levels, peerLevel }: RatingScale,
): CategoryOrOpen {
  if (!(peerLevel > LOWEST && peerLevel <= levels)) throw new RangeError("peerLevel goes from 2 to the highest level");
  if (![entryLevel, exitLevel].every((level) => Number.isInteger(level) && level >= LOWEST && level <= levels)) {
    throw new RangeError(`a level is a whole number from 1 to ${levels}`);
  }
  if (exitLevel >= peerLevel) return entryLevel >= peerLevel ? "e" : "d";
  if (exitLevel > entryLevel) return "c";
  // whoever keeps a level above the lowest while growing older has gained something
  if (exitLevel === entryLevel && exitLevel > LOWEST) return "b";
  if (gainedAnySkill === null) return "a or b";
  return gainedAnySkill ? "b" : "a";
}
