import { chiSquaredTail } from "./distributions";
import { type Comparison, type GroupCounts, groupsOf, notCompared, type GroupLabel } from "./groups";
import { refuseBadColumns, type WatchedAges } from "./kaplan-meier";
import { quadraticForm } from "./quadratic-form";

/**
 * Whether groups meet a skill at different ages, where each age is known exactly or only known to be later.
 *
 * At each age at which a child met it, the number expected in each group is its share of the children then watched;
 * observed less expected, summed, is compared with its hypergeometric variance. Delayed entry only changes who is watched.
 *
 * Source: Mantel (1966), Cancer Chemother Rep 50:163-170; Klein & Moeschberger (2003), section 7.3.
 *
 * @throws {RangeError} when the columns differ in length or an age is not a number
 */
export function logRank(watched: WatchedAges, group: readonly GroupLabel[]): Comparison {
  refuseBadColumns(watched);
  const { labels, codes } = groupsOf(group, watched.ageDays.length);
  if (labels.length < 2) return notCompared("log-rank", "there is only one group");
  const tally = new Tally(labels.length);
  walkAges(watched, codes, tally);
  const { value, rank } = quadraticForm(tally.excess(), tally.variance);
  if (rank === 0) return notCompared("log-rank", "no age at which children of different groups could be compared");
  return {
    method: "log-rank",
    chiSquared: value,
    degreesOfFreedom: rank,
    p: chiSquaredTail(value, rank),
    reason: null,
    groups: tally.counts(labels, codes),
  };
}

/** Goes through the ages at which a child met the skill, keeping the number watched in each group. */
function walkAges({ ageDays, met, entryDays }: WatchedAges, codes: Int32Array, tally: Tally): void {
  const watched = [...ageDays.keys()].filter((child) => entryDays === undefined || entryDays[child]! < ageDays[child]!);
  const byAge = [...watched].sort((a, b) => ageDays[a]! - ageDays[b]!);
  const entryOf = (child: number) => (entryDays === undefined ? -Infinity : entryDays[child]!);
  const byEntry = [...watched].sort((a, b) => (entryOf(a) < entryOf(b) ? -1 : entryOf(a) > entryOf(b) ? 1 : 0));
  for (let first = 0, entered = 0; first < byAge.length;) {
    const age = ageDays[byAge[first]!]!;
    for (; entered < byEntry.length && entryOf(byEntry[entered]!) < age; entered += 1) {
      tally.enter(codes[byEntry[entered]!]!);
    }
    let end = first;
    while (end < byAge.length && ageDays[byAge[end]!] === age) end += 1;
    const here = byAge.slice(first, end);
    tally.meet(here.filter((child) => met[child] === 1).map((child) => codes[child]!));
    here.forEach((child) => tally.leave(codes[child]!));
    first = end;
  }
}

class Tally {
  readonly observed: Float64Array;
  readonly expected: Float64Array;
  readonly variance: number[][];
  private readonly atRisk: Float64Array;
  private total = 0;

  constructor(groups: number) {
    this.observed = new Float64Array(groups);
    this.expected = new Float64Array(groups);
    this.atRisk = new Float64Array(groups);
    this.variance = Array.from({ length: groups }, () => new Array<number>(groups).fill(0));
  }

  enter(group: number): void {
    this.atRisk[group]! += 1;
    this.total += 1;
  }

  leave(group: number): void {
    this.atRisk[group]! -= 1;
    this.total -= 1;
  }

  meet(groups: readonly number[]): void {
    const met = groups.length;
    if (met === 0) return;
    const { total, atRisk, variance } = this;
    groups.forEach((group) => (this.observed[group]! += 1));
    const spread = total > 1 ? (met * (total - met)) / (total - 1) : 0;
    atRisk.forEach((watched, row) => {
      this.expected[row]! += (met * watched) / total;
      atRisk.forEach((other, column) => {
        const share = (row === column ? 1 : 0) - other / total;
        variance[row]![column]! += spread * (watched / total) * share;
      });
    });
  }

  excess(): number[] {
    return Array.from(this.observed, (observed, group) => observed - this.expected[group]!);
  }

  counts(labels: readonly GroupLabel[], codes: Int32Array): GroupCounts[] {
    return labels.map((group, code) => ({
      group,
      n: codes.filter((each) => each === code).length,
      observed: this.observed[code]!,
      expected: this.expected[code]!,
    }));
  }
}
