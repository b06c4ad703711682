import { placeMass } from "./em-icm";
import { distinctIntervals, type DistinctIntervals } from "./index-intervals";
import { findInnermost, roomForInnermost, type Innermost } from "./innermost";
import { workspaceForMass, type MassWorkspace } from "./mass-workspace";

export interface NpmleOptions {
  /** how many children each row stands for; 1 each when left out */
  readonly weights?: Float64Array;
  /** stop when the largest gradient is at most n plus this; 1e-9 when left out */
  readonly stopAt?: number;
  readonly mostIterations?: number;
}

export interface Npmle {
  /** innermost intervals (from, to] in days; from = to is a day known exactly; the last `to` may be Infinity */
  readonly from: Float64Array;
  readonly to: Float64Array;
  /** share of the children who met the skill in each, 0 to 1; they sum to 1 */
  readonly mass: Float64Array;
  /** share met by the end of each, 0 to 1 */
  readonly shareTo: Float64Array;
  /** largest gradient over the innermost intervals, less n: 0 at the optimum, and what the log-likelihood can still gain */
  readonly largestGradient: number;
  readonly logLikelihood: number;
  readonly iterations: number;
  readonly n: number;
}

export const STOP_AT_GAP = 1e-9;
const MOST_ITERATIONS = 2000;

/**
 * Share of children who have met a skill by each age, where visits only bracket the day it was met.
 *
 * Each child gives an interval (after, by]. The estimate puts mass only on the innermost intervals, and is optimal
 * when no innermost interval has a gradient above n (`largestGradient`). Where inside one of them the mass lies, the
 * data cannot say.
 *
 * Source: Turnbull (1976), J R Stat Soc B 38:290-295; optimality: Gentleman & Geyer (1994), Biometrika 81:618-623.
 * Differs: R's survfit(type = "interval2") stops before it converges, and reads intervals closed at both ends.
 *
 * @param after - days, the age at birth where the skill was there at the first look
 * @param by - days, Infinity where it was never seen; equal to `after` where the day is known
 * @throws {RangeError} when there is no row, the columns differ in length or an interval is empty
 */
export function npmle(after: Float64Array, by: Float64Array, options: NpmleOptions = {}): Npmle {
  if (after.length === 0) throw new RangeError("npmle: there is no interval");
  const intervals = distinctIntervals(after, by, options.weights);
  const cover = roomForInnermost(intervals);
  findInnermost(intervals, intervals.count, cover);
  const workspace = workspaceForMass(cover.size);
  workspace.mass.fill(1 / cover.size, 0, cover.size);
  const stopAt = options.stopAt ?? STOP_AT_GAP;
  const fit = placeMass(cover, intervals.n, workspace, stopAt, options.mostIterations ?? MOST_ITERATIONS);
  return {
    ...fit,
    ...columnsOf(intervals, cover, workspace),
    logLikelihood: logLikelihood(cover, workspace),
    n: intervals.n,
  };
}

function columnsOf(intervals: DistinctIntervals, cover: Innermost, workspace: MassWorkspace) {
  const { size, startKey, endKey } = cover;
  const from = Float64Array.from({ length: size }, (_, index) => intervals.ages[startKey[index]! >> 1]!);
  const to = Float64Array.from({ length: size }, (_, index) => intervals.ages[endKey[index]! >> 1]!);
  const mass = workspace.mass.slice(0, size);
  const shareTo = new Float64Array(size);
  let share = 0;
  for (let index = 0; index < size; index += 1) {
    share += mass[index]!;
    shareTo[index] = Math.min(1, share);
  }
  return { from, to, mass, shareTo };
}

function logLikelihood(cover: Innermost, workspace: MassWorkspace): number {
  let sum = 0;
  const cumulative = new Float64Array(cover.size + 1);
  for (let index = 0; index < cover.size; index += 1)
    cumulative[index + 1] = cumulative[index]! + workspace.mass[index]!;
  for (let index = 0; index < cover.used; index += 1) {
    sum += cover.count[index]! * Math.log(cumulative[cover.last[index]! + 1]! - cumulative[cover.first[index]!]!);
  }
  return sum;
}
