import { normalHalfWidth } from "./distributions";

export interface WatchedAges {
  /** age in days when the skill was met, or when the child was last seen without it */
  readonly ageDays: Float64Array;
  /** 1 where it was met at that age, 0 where not by then */
  readonly met: Uint8Array;
  /** age in days from which the child was watched; watched from birth where left out */
  readonly entryDays?: Float64Array;
}

/** One age at which a child met the skill. */
export interface KaplanMeierStep {
  readonly ageDays: number;
  /** children watched and without the skill just before that age: entry < age <= last age */
  readonly atRisk: number;
  readonly met: number;
  /** share still without the skill after that age, 0 to 1 */
  readonly survival: number;
  /** Greenwood's, of `survival`; null where everybody watched has met it */
  readonly standardError: number | null;
  /** log-log limits of `survival`; null where it is 0 */
  readonly lower: number | null;
  readonly upper: number | null;
}

export interface KaplanMeier {
  readonly steps: readonly KaplanMeierStep[];
  /** children who were watched for at least a moment */
  readonly n: number;
  /** last age in days at which a child was watched */
  readonly lastAgeDays: number;
  /** age at which everybody then watched had met it though others were watched later: nothing after it can be told */
  readonly exhaustedAtDays: number | null;
}

/**
 * Share of children still without a skill by each age, where the age is known exactly or only known to be later.
 *
 * At each age the share is multiplied by 1 - met / at risk. A child who enters at an age is not at risk at that age; one
 * last seen at an age is. `fromDays` starts the curve later, for those who had not met the skill by then: with delayed
 * entry the first risk sets may hold one or two children, and one of them can bring the share to 0 for good.
 *
 * Source: Kaplan & Meier (1958), J Am Stat Assoc 53:457-481; Greenwood (1926); log-log limits: Kalbfleisch & Prentice
 * (1980), section 1.3; delayed entry: Klein & Moeschberger (2003), section 4.6.
 *
 * @throws {RangeError} when the columns differ in length, an age is not a number, or the level is not within 0 and 1
 */
export function kaplanMeier(watched: WatchedAges, level: number, fromDays = -Infinity): KaplanMeier {
  refuseBadColumns(watched);
  const z = normalHalfWidth(level);
  const { entries, exits, events } = sortedAges(watched, fromDays);
  const steps: KaplanMeierStep[] = [];
  let survival = 1;
  let greenwood = 0;
  for (let event = 0, entered = 0, left = 0; event < events.length;) {
    const ageDays = events[event]!;
    let met = 0;
    for (; events[event] === ageDays; event += 1) met += 1;
    while (entered < entries.length && entries[entered]! < ageDays) entered += 1;
    while (left < exits.length && exits[left]! < ageDays) left += 1;
    const atRisk = entered - left;
    survival *= (atRisk - met) / atRisk;
    greenwood += met / (atRisk * (atRisk - met));
    steps.push({ ageDays, atRisk, met, survival, ...uncertainty(survival, greenwood, z) });
  }
  const lastAgeDays = exits.length === 0 ? NaN : exits[exits.length - 1]!;
  const emptied = steps.find((step) => step.survival === 0);
  const exhaustedAtDays = emptied !== undefined && emptied.ageDays < lastAgeDays ? emptied.ageDays : null;
  return { steps, n: exits.length, lastAgeDays, exhaustedAtDays };
}

function uncertainty(survival: number, greenwood: number, z: number) {
  if (survival === 0) return { standardError: null, lower: null, upper: null };
  const standardError = survival * Math.sqrt(greenwood);
  const spread = (z * Math.sqrt(greenwood)) / Math.log(survival);
  return { standardError, lower: survival ** Math.exp(-spread), upper: survival ** Math.exp(spread) };
}

/** Ages of those who were watched, each column sorted on its own. */
function sortedAges({ ageDays, met, entryDays }: WatchedAges, fromDays: number) {
  const watched = [...ageDays.keys()].filter(
    (child) => ageDays[child]! >= fromDays && (entryDays === undefined || entryDays[child]! < ageDays[child]!),
  );
  return {
    entries: Float64Array.from(watched, (child) => entryDays?.[child] ?? -Infinity).sort(),
    exits: Float64Array.from(watched, (child) => ageDays[child]!).sort(),
    events: Float64Array.from(
      watched.filter((child) => met[child] === 1),
      (child) => ageDays[child]!,
    ).sort(),
  };
}

export function refuseBadColumns({ ageDays, met, entryDays }: WatchedAges): void {
  if (met.length !== ageDays.length || (entryDays !== undefined && entryDays.length !== ageDays.length)) {
    throw new RangeError("ages, met and entries differ in length");
  }
  ageDays.forEach((age, child) => {
    if (!Number.isFinite(age)) throw new RangeError(`the age of row ${child + 1} is not a number`);
    if (entryDays !== undefined && Number.isNaN(entryDays[child]!)) {
      throw new RangeError(`the entry of row ${child + 1} is not a number`);
    }
  });
}
