import type { Npmle } from "./npmle";

/** Columns of an estimate that hold `size` innermost intervals; longer columns are read only that far. */
export interface MassColumns {
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly mass: Float64Array;
  readonly size: number;
}

/** Less mass than this counts as none. */
export const NO_MASS = 1e-9;
/** A share counts as reached this much early, so that a sum of thirds reaches 1. */
export const SHARE_REACHED_WITHIN = 1e-7;

/**
 * First age in days at which the share met reaches `share`, mass spread evenly within each innermost interval.
 * Null where the share is not reached by the end of the last finite one (METHOD.md, section 9).
 *
 * @throws {RangeError} when `share` is not between 0 and 1
 */
export function percentile(estimate: Npmle, share: number): number | null {
  refuseShare(share);
  const age = ageAtShare(columnsOf(estimate), share);
  return age === Infinity ? null : age;
}

/**
 * Share met by an age in days, mass spread evenly within each innermost interval.
 * Beyond the last finite interval that holds mass it is null, or 1 where no mass is left.
 */
export function shareBy(estimate: Npmle, ageDays: number): number | null {
  if (Number.isNaN(ageDays)) throw new RangeError("shareBy: the age is not a number");
  const share = shareAtAge(columnsOf(estimate), ageDays);
  return share === Infinity ? null : share;
}

export function refuseShare(share: number): void {
  if (!(share > 0 && share <= 1)) throw new RangeError("a share asked for must be above 0 and at most 1");
}

/** As `percentile`, with Infinity for a share that is not reached. */
export function ageAtShare({ from, to, mass, size }: MassColumns, share: number): number {
  const wanted = share - SHARE_REACHED_WITHIN;
  let below = 0;
  for (let index = 0; index < size && to[index] !== Infinity; index += 1) {
    const upTo = below + mass[index]!;
    if (upTo >= wanted) return from[index]! + ((wanted - below) / mass[index]!) * (to[index]! - from[index]!);
    below = upTo;
  }
  return Infinity;
}

/** As `shareBy`, with Infinity for an age beyond what can be read. */
export function shareAtAge(columns: MassColumns, ageDays: number): number {
  const { from, to, mass, size } = columns;
  const end = lastFiniteWithMass(columns);
  if (end < 0) return Infinity;
  if (ageDays > to[end]!) return to[size - 1] === Infinity && mass[size - 1]! > NO_MASS ? Infinity : 1;
  let share = 0;
  for (let index = 0; index < size && from[index]! <= ageDays; index += 1) {
    if (to[index]! <= ageDays) share += mass[index]!;
    else share += (mass[index]! * (ageDays - from[index]!)) / (to[index]! - from[index]!);
  }
  return Math.min(1, share);
}

function lastFiniteWithMass({ to, mass, size }: MassColumns): number {
  let index = size - 1;
  while (index >= 0 && (to[index] === Infinity || mass[index]! <= NO_MASS)) index -= 1;
  return index;
}

function columnsOf(estimate: Npmle): MassColumns {
  return { from: estimate.from, to: estimate.to, mass: estimate.mass, size: estimate.mass.length };
}
