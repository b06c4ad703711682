import { normalHalfWidth } from "./distributions";
import { standardisedShare } from "./standardise";

/** What one child adds to one stratum before and after: how many checks, and how many of them met. */
export interface ChildCounts {
  readonly stratum: number;
  readonly before: { readonly count: number; readonly of: number };
  readonly after: { readonly count: number; readonly of: number };
}

export interface StandardisedChange {
  readonly change: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * How far a directly standardized share moved between two dates, with limits that know that the checks of one child go
 * together, on one date and across both.
 *
 * Each child adds w ((y' - p' n') / N' - (y - p n) / N): w the weight of its stratum, y of n checks met and p of N in the
 * stratum, primed at the later date. The variance is the sum of the squares of what the children add, times C / (C - 1).
 *
 * Source: Binder (1983), Int Stat Rev 51:279-292 (linearization, children as the units that were drawn).
 *
 * @param children - for each child, the strata in which it has checks
 * @param weights - of the strata; they need not add up to 1
 * @returns null where a stratum with weight holds no check on one of the dates, or there are fewer than two children
 */
export function standardisedChange(
  children: readonly (readonly ChildCounts[])[],
  weights: readonly number[],
  level: number,
): StandardisedChange | null {
  const all = children.flat();
  const totals = (date: "before" | "after") => weights.map((_, stratum) => totalOf(all, stratum, date));
  const [before, after] = [totals("before"), totals("after")];
  const [first, last] = [standardisedShare(before, weights), standardisedShare(after, weights)];
  if (first === null || last === null || children.length < 2) return null;
  const weightOfAll = weights.reduce((sum, weight) => sum + weight, 0);
  const added = children.map((own) =>
    own.reduce((sum, counts) => {
      const residual =
        residualOf(counts.after, after[counts.stratum]!) - residualOf(counts.before, before[counts.stratum]!);
      return sum + (weights[counts.stratum]! / weightOfAll) * residual;
    }, 0),
  );
  const squares = added.map((each) => each ** 2).sort((a, b) => a - b);
  const variance = (children.length / (children.length - 1)) * squares.reduce((sum, each) => sum + each, 0);
  const half = normalHalfWidth(level) * Math.sqrt(variance);
  return { change: last - first, lower: last - first - half, upper: last - first + half };
}

interface Counts {
  readonly count: number;
  readonly of: number;
}

function totalOf(all: readonly ChildCounts[], stratum: number, date: "before" | "after"): Counts {
  const own = all.filter((each) => each.stratum === stratum).map((each) => each[date]);
  return {
    count: own.reduce((sum, { count }) => sum + count, 0),
    of: own.reduce((sum, { of }) => sum + of, 0),
  };
}

function residualOf(own: Counts, stratum: Counts): number {
  return stratum.of === 0 ? 0 : (own.count - (stratum.count / stratum.of) * own.of) / stratum.of;
}
