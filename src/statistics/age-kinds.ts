import type { WatchedAges } from "./kaplan-meier";

/** Ages as the workbook's functions and the tables hand them over: one row a child. */
export interface AgeColumns {
  /** days, the age at birth where the skill was there at the first look */
  readonly after: Float64Array;
  /** days, Infinity where it was never seen; equal to `after` where the day is known */
  readonly by: Float64Array;
  /** days, the age from which the child was watched; only where every age is exact or never seen */
  readonly entry?: Float64Array | undefined;
}

/** True when no age is only bracketed between two looks. */
export function allExactOrLater({ after, by }: AgeColumns): boolean {
  return by.every((end, child) => end === Infinity || end === after[child]);
}

/** @throws {RangeError} when an entry stands beside ages that are only bracketed, or a row is not an age */
export function refuseBadAges(columns: AgeColumns): void {
  const { after, by, entry } = columns;
  if (after.length !== by.length) throw new RangeError("`after` and `by` differ in length");
  if (entry !== undefined && entry.length !== after.length)
    throw new RangeError("`entry` and `after` differ in length");
  after.forEach((start, child) => {
    if (!Number.isFinite(start)) throw new RangeError(`\`after\` of row ${child + 1} is not a number`);
    if (!(start <= by[child]!)) throw new RangeError(`row ${child + 1} ends before it starts`);
  });
  if (entry !== undefined && !allExactOrLater(columns)) {
    throw new RangeError("`entry` needs ages that are exact or later than the last look, not intervals");
  }
}

export function watchedAges({ after, by, entry }: AgeColumns): WatchedAges {
  const met = Uint8Array.from(by, (end) => (end === Infinity ? 0 : 1));
  return { ageDays: after, met, ...(entry === undefined ? {} : { entryDays: entry }) };
}
