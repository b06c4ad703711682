import { refuseLevel } from "./distributions";
import { placeMass } from "./em-icm";
import { distinctIntervals, type DistinctIntervals } from "./index-intervals";
import { findInnermost, roomForInnermost, type Innermost } from "./innermost";
import { workspaceForMass, type MassWorkspace } from "./mass-workspace";
import { ageAtShare, refuseShare, shareAtAge, type MassColumns } from "./npmle-reading";
import { quantileOfSorted } from "./quantile";
import { randomFrom, type Random } from "./random";

export interface BootstrapOptions {
  /** shares, 0 to 1, whose ages are asked for */
  readonly shares: readonly number[];
  /** ages in days at which the share met is asked for */
  readonly ages: readonly number[];
  readonly replicates: number;
  readonly level: number;
  readonly seed: number;
}

/** Null where the limit is out of reach. */
export interface Limits {
  readonly lower: number | null;
  readonly upper: number | null;
}

export interface BootstrapLimits {
  /** limits of the age in days, in the order of `shares` */
  readonly ageLimits: readonly Limits[];
  /** limits of the share met, in the order of `ages` */
  readonly shareLimits: readonly Limits[];
}

/** Replicates need fewer digits than the estimate itself. */
const REPLICATE_STOPS_AT_GAP = 1e-4;
const MOST_ROUNDS = 500;

/**
 * Percentile-bootstrap limits of the interval-censored estimate: children are drawn with replacement, the estimate is
 * made anew, and the limits are type 7 quantiles over the replicates. A replicate that cannot reach a share, or cannot
 * be read at an age, counts as infinite. The percentile bootstrap of this estimate is a convention, not a theorem.
 *
 * Draws run over the distinct intervals in their own order (start, then end) with their counts, so that the order of the
 * rows changes nothing: a draw below n picks the first interval whose running count passes it.
 *
 * Source: Efron & Tibshirani (1993), An Introduction to the Bootstrap, chapter 13.
 *
 * @throws {RangeError} when there is no child, an interval is empty, or an option is out of range
 */
export function bootstrapAgeWhenMet(after: Float64Array, by: Float64Array, options: BootstrapOptions): BootstrapLimits {
  refuseOptions(after, options);
  const children = distinctIntervals(after, by);
  const draws = new Float64Array(children.left.length);
  const sorted = sortedChildren(children);
  const random = randomFrom(options.seed);
  const bench = benchFor(children);
  const ages = options.shares.map(() => new Float64Array(options.replicates));
  const shares = options.ages.map(() => new Float64Array(options.replicates));
  for (let replicate = 0; replicate < options.replicates; replicate += 1) {
    drawChildren(sorted, draws, random);
    const estimate = estimateOf(children, draws, bench);
    options.shares.forEach((share, index) => (ages[index]![replicate] = ageAtShare(estimate, share)));
    options.ages.forEach((age, index) => (shares[index]![replicate] = shareAtAge(estimate, age)));
  }
  const limits = (values: Float64Array) => limitsOf(values, options.level);
  return { ageLimits: ages.map(limits), shareLimits: shares.map(limits) };
}

interface Bench {
  readonly cover: Innermost;
  readonly workspace: MassWorkspace;
  readonly columns: { from: Float64Array; to: Float64Array; mass: Float64Array; size: number };
}

function benchFor(children: DistinctIntervals): Bench {
  const cover = roomForInnermost(children);
  const most = cover.startKey.length;
  const workspace = workspaceForMass(most);
  return {
    cover,
    workspace,
    columns: { from: new Float64Array(most), to: new Float64Array(most), mass: workspace.mass, size: 0 },
  };
}

/** The interval of each child, the children standing in the order of their intervals. */
function sortedChildren({ count, n }: DistinctIntervals): Int32Array {
  const sorted = new Int32Array(n);
  let from = 0;
  count.forEach((children, interval) => {
    sorted.fill(interval, from, from + children);
    from += children;
  });
  return sorted;
}

function drawChildren(sorted: Int32Array, draws: Float64Array, random: Random): void {
  draws.fill(0);
  for (let draw = 0; draw < sorted.length; draw += 1) draws[sorted[random.nextInt(sorted.length)]!]! += 1;
}

function estimateOf(
  children: DistinctIntervals,
  draws: Float64Array,
  { cover, workspace, columns }: Bench,
): MassColumns {
  findInnermost(children, draws, cover);
  workspace.mass.fill(1 / cover.size, 0, cover.size);
  placeMass(cover, children.n, workspace, REPLICATE_STOPS_AT_GAP, MOST_ROUNDS);
  for (let index = 0; index < cover.size; index += 1) {
    columns.from[index] = children.ages[cover.startKey[index]! >> 1]!;
    columns.to[index] = children.ages[cover.endKey[index]! >> 1]!;
  }
  columns.size = cover.size;
  return columns;
}

function limitsOf(values: Float64Array, level: number): Limits {
  values.sort();
  const tail = (1 - level) / 2;
  const lower = quantileOfSorted(values, tail);
  const upper = quantileOfSorted(values, 1 - tail);
  return { lower: lower === Infinity ? null : lower, upper: upper === Infinity ? null : upper };
}

function refuseOptions(after: Float64Array, options: BootstrapOptions): void {
  if (after.length === 0) throw new RangeError("bootstrapAgeWhenMet: there is no child");
  refuseLevel(options.level);
  options.shares.forEach(refuseShare);
  if (options.ages.some((age) => Number.isNaN(age)))
    throw new RangeError("bootstrapAgeWhenMet: an age is not a number");
  if (!Number.isInteger(options.replicates) || options.replicates < 2) {
    throw new RangeError("bootstrapAgeWhenMet: replicates must be a whole number of at least 2");
  }
}
