/** How long it takes until a look is typed in, as far as can be told from those already typed in. */
export interface EntryLag {
  /** Share entered within 0, 1, 2, ... days, of those entered within the longest lag seen; the last is 1. */
  readonly within: Float64Array;
}

/**
 * The distribution of lags, where a lag is only seen if it is no longer than the days that have passed: long lags of recent
 * looks are missing. Backwards in time they are at risk like any other: of those entered within u days and watched for u
 * days or more, the share entered on day u itself is the reverse-time hazard.
 *
 * Source: Lagakos, Barraj & De Gruttola (1988), Biometrika 75:515-523; Kalbfleisch & Lawless (1989), J Am Stat Assoc
 * 84:360-372.
 *
 * @param lagDays - whole days from the look to its entry
 * @param elapsedDays - whole days from the look to the day on which the records were closed; never less than the lag
 * @throws {RangeError} when the columns differ in length, or a lag is negative, not whole, or longer than what elapsed
 */
export function entryLag(lagDays: Int32Array, elapsedDays: Int32Array): EntryLag {
  refuse(lagDays, elapsedDays);
  const longest = lagDays.reduce((most, lag) => Math.max(most, lag), 0);
  const withLag = countsUpTo(lagDays, longest);
  const watchedFor = countsUpTo(elapsedDays, longest);
  const within = new Float64Array(longest + 1).fill(1);
  let enteredBy = lagDays.length;
  let watchedLess = lagDays.length - (watchedFor[longest + 1] as number) - (watchedFor[longest] as number);
  for (let lag = longest; lag >= 1; lag -= 1) {
    const atRisk = enteredBy - watchedLess;
    const hazard = atRisk === 0 ? 0 : (withLag[lag] as number) / atRisk;
    within[lag - 1] = (within[lag] as number) * (1 - hazard);
    enteredBy -= withLag[lag] as number;
    watchedLess -= watchedFor[lag - 1] as number;
  }
  return { within };
}

/** Share entered within so many days; 0 before the look, 1 from the longest lag on. */
export function shareEnteredWithin({ within }: EntryLag, days: number): number {
  if (days < 0) return 0;
  return within[Math.min(days, within.length - 1)] as number;
}

/**
 * The share of looks still to come, where each look seen stands for one over the chance that it was already entered.
 *
 * @param elapsedDays - of the looks seen, on the day on which the records were closed
 * @param laterDays - days after that at which the share still missing is asked for; 0 for that day itself
 * @returns null where there is no look, or one that the lags say cannot have been entered yet
 */
export function shareStillMissing(lag: EntryLag, elapsedDays: ArrayLike<number>, laterDays = 0): number | null {
  let all = 0;
  let missing = 0;
  for (let at = 0; at < elapsedDays.length; at += 1) {
    const elapsed = elapsedDays[at] as number;
    const entered = shareEnteredWithin(lag, elapsed);
    if (entered === 0) return null;
    all += 1 / entered;
    missing += (1 - shareEnteredWithin(lag, elapsed + laterDays)) / entered;
  }
  return all === 0 ? null : missing / all;
}

/**
 * The first number of days, from `from` on, at which at most `share` is still missing; it may be negative.
 *
 * @returns null where the share missing cannot be told
 */
export function daysUntilMissing(
  lag: EntryLag,
  elapsedDays: ArrayLike<number>,
  share: number,
  from: number,
): number | null {
  if (shareStillMissing(lag, elapsedDays) === null) return null;
  let later = from;
  while ((shareStillMissing(lag, elapsedDays, later) as number) > share) later += 1;
  return later;
}

/** How many are 0, 1, ... `most`; those above it stand last. */
function countsUpTo(values: Int32Array, most: number): Uint32Array {
  const counts = new Uint32Array(most + 2);
  for (const value of values) counts[Math.min(value, most + 1)]! += 1;
  return counts;
}

function refuse(lagDays: Int32Array, elapsedDays: Int32Array): void {
  if (lagDays.length !== elapsedDays.length) throw new RangeError("entryLag: the columns differ in length");
  lagDays.forEach((lag, row) => {
    if (lag < 0) throw new RangeError(`entryLag: the lag of row ${row + 1} is negative`);
    if (lag > elapsedDays[row]!)
      throw new RangeError(`entryLag: row ${row + 1} was entered after the records were closed`);
  });
}
