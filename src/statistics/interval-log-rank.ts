import { chiSquaredTail } from "./distributions";
import { type Comparison, type GroupLabel, groupsOf, notCompared } from "./groups";
import { npmle, type Npmle } from "./npmle";

const METHOD = "log-rank (score form for intervals)";

/**
 * Whether groups meet a skill at different ages, where visits only bracket the age.
 *
 * Each child's score is the slope of its own log-likelihood when the hazard rises, at the estimate of all groups together:
 * (S log S at the start of its interval, less the same at its end) over the difference of the two S. Group sums of scores
 * are compared with their variance over all ways to deal the children to the groups.
 *
 * Source: Finkelstein (1986), Biometrics 42:845-854; permutation variance: Fay (1999), Stat Med 18:273-285.
 *
 * @throws {RangeError} when the columns differ in length or an interval is empty
 */
export function intervalLogRank(after: Float64Array, by: Float64Array, group: readonly GroupLabel[]): Comparison {
  const { labels, codes } = groupsOf(group, after.length);
  if (labels.length < 2) return notCompared(METHOD, "there is only one group");
  const scores = finkelsteinScores(after, by);
  const mean = scores.reduce((sum, score) => sum + score, 0) / scores.length;
  const spread = scores.reduce((sum, score) => sum + (score - mean) ** 2, 0);
  if (spread < NO_SPREAD * scores.length) return notCompared(METHOD, "the checks are the same for any two children");
  const sizes = new Float64Array(labels.length);
  const sums = new Float64Array(labels.length);
  scores.forEach((score, child) => {
    sizes[codes[child]!]! += 1;
    sums[codes[child]!]! += score - mean;
  });
  const between = sums.reduce((sum, excess, index) => sum + excess ** 2 / sizes[index]!, 0);
  const chiSquared = ((scores.length - 1) * between) / spread;
  const degreesOfFreedom = labels.length - 1;
  const groups = labels.map((label, code) => ({ group: label, n: sizes[code]!, observed: null, expected: null }));
  const p = chiSquaredTail(chiSquared, degreesOfFreedom);
  return { method: METHOD, chiSquared, degreesOfFreedom, p, reason: null, groups };
}

/** Scores differ by less than this, squared, only through rounding. */
const NO_SPREAD = 1e-16;

/** High where the skill was met early, low where late. */
export function finkelsteinScores(after: Float64Array, by: Float64Array): Float64Array {
  const estimate = npmle(after, by);
  return after.map((start, child) => {
    const end = by[child]!;
    const before = 1 - shareUpTo(estimate, start) + (start === end ? massOn(estimate, start) : 0);
    const beyond = end === Infinity ? 0 : Math.max(0, 1 - shareUpTo(estimate, end));
    return (timesLog(before) - timesLog(beyond)) / (before - beyond);
  });
}

/** Share met by the end of the last innermost interval that ends by an age. */
function shareUpTo(estimate: Npmle, ageDays: number): number {
  const ended = endedBy(estimate, ageDays);
  return ended === 0 ? 0 : estimate.shareTo[ended - 1]!;
}

function massOn(estimate: Npmle, ageDays: number): number {
  return estimate.mass[endedBy(estimate, ageDays) - 1]!;
}

function endedBy({ to }: Npmle, ageDays: number): number {
  let low = 0;
  let high = to.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (to[middle]! <= ageDays) low = middle + 1;
    else high = middle;
  }
  return low;
}

function timesLog(share: number): number {
  return share <= 0 ? 0 : share * Math.log(share);
}
