import { bisect } from "simple-statistics";
import { binomialAtLeast, binomialShareWhereAtLeast, normalHalfWidth, refuseLevel } from "./distributions";

export type ShareMethod = "wilson" | "exact" | "mid-p";

/** A share of 0 to 1 with its limits; null throughout where there is nobody to take a share of. */
export interface ShareInterval {
  readonly share: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly reason: string | null;
}

export interface DifferenceInterval {
  readonly difference: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly reason: string | null;
}

const NOBODY = "there is nobody to take a share of";
const BISECTIONS = 200;
const SHARE_DIGITS = 1e-15;

/**
 * A share with its confidence limits.
 *
 * "wilson": the shares that a score test would not reject, by the normal distribution. "exact": those that neither
 * binomial tail, the count itself included, would reject. "mid-p": as exact, with half of the count's own probability.
 *
 * Source: Wilson (1927), J Am Stat Assoc 22:209-212; Clopper & Pearson (1934), Biometrika 26:404-413;
 * Lancaster's mid-p as in Newcombe (1998), Stat Med 17:857-872, method 6.
 *
 * @throws {RangeError} when the counts are not whole, negative, or more than there are, or the level is not within 0 and 1
 */
export function shareInterval(count: number, of: number, level: number, method: ShareMethod): ShareInterval {
  refuseLevel(level);
  refuseCounts(count, of);
  if (of === 0) return { share: null, lower: null, upper: null, reason: NOBODY };
  const limits = LIMITS[method];
  if (limits === undefined) throw new RangeError('shareInterval: the method is "wilson", "exact" or "mid-p"');
  const lower = count === 0 ? 0 : limits(count, of, level);
  const upper = count === of ? 1 : 1 - limits(of - count, of, level);
  return { share: count / of, lower, upper, reason: null };
}

/**
 * The difference between two shares, the first less the second, with limits made of each share's Wilson limits.
 *
 * Source: Newcombe (1998), Stat Med 17:873-890, method 10.
 */
export function shareDifference(
  count1: number,
  of1: number,
  count2: number,
  of2: number,
  level: number,
): DifferenceInterval {
  const first = shareInterval(count1, of1, level, "wilson");
  const second = shareInterval(count2, of2, level, "wilson");
  if (first.share === null || second.share === null) {
    return { difference: null, lower: null, upper: null, reason: NOBODY };
  }
  const difference = first.share - second.share;
  const down = Math.hypot(first.share - first.lower!, second.upper! - second.share);
  const up = Math.hypot(first.upper! - first.share, second.share - second.lower!);
  return { difference, lower: Math.max(-1, difference - down), upper: Math.min(1, difference + up), reason: null };
}

/** Lower limits of a count above 0; the upper limit is 1 less the lower limit of the rest. */
const LIMITS: Readonly<Record<ShareMethod, (count: number, of: number, level: number) => number>> = {
  wilson: (count, of, level) => {
    const z = normalHalfWidth(level);
    const middle = count + (z * z) / 2;
    const half = z * Math.sqrt((count * (of - count)) / of + (z * z) / 4);
    return Math.max(0, middle - half) / (of + z * z);
  },
  exact: (count, of, level) => binomialShareWhereAtLeast(count, of, (1 - level) / 2),
  "mid-p": (count, of, level) => {
    const excess = (share: number) =>
      (binomialAtLeast(count, of, share) + binomialAtLeast(count + 1, of, share)) / 2 - (1 - level) / 2;
    return bisect(excess, 0, 1, BISECTIONS, SHARE_DIGITS);
  },
};

function refuseCounts(count: number, of: number): void {
  if (!Number.isInteger(count) || !Number.isInteger(of) || count < 0) {
    throw new RangeError("a share needs whole counts that are not negative");
  }
  if (count > of) throw new RangeError("a share's count cannot be more than there are");
}
