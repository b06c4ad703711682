/**
 * Share of children who have met a skill by each age, from intervals: small samples, no shortcuts.
 *
 * The mass sits on the innermost intervals (Turnbull 1976, J R Stat Soc B 38:290-295). Self-consistency brings it near
 * the optimum; Newton steps on the intervals that hold mass bring it there; the optimality conditions (Gentleman and
 * Geyer 1994, Biometrika 81:618-623) say when it has arrived: no interval's gradient is above the number of children,
 * and it equals that number wherever there is mass. No other masses are as likely: every innermost interval is the last of
 * those open to some child, so the children who end there settle its mass once the earlier ones are settled.
 */
import { solve } from "./linear";

/** Whole days of age. `by` null: never seen. `after` = `by`: the day itself is known. */
export interface AgeInterval {
  readonly after: number;
  readonly by: number | null;
}

export interface Piece {
  readonly from: number;
  /** Infinity: beyond the last look. */
  readonly to: number;
  readonly mass: number;
}

export interface SlowNpmle {
  readonly pieces: readonly Piece[];
  /** Largest gradient over the innermost intervals, less n: 0 at the optimum. */
  readonly largestGradient: number;
}

/** Mass below this counts as none. */
const NO_MASS = 1e-9;
const PERCENTILE_TOLERANCE = 1e-7;

export function slowNpmle(ages: readonly AgeInterval[]): SlowNpmle {
  if (ages.length === 0) throw new RangeError("slowNpmle: no child");
  const spans = innermost(ages);
  const inside = ages.map((age) => spans.map((span) => (startOf(age) <= span.start && span.to <= endOf(age) ? 1 : 0)));
  const mass = climbed(inside, selfConsistent(inside, spans.length));
  const gradient = gradientOf(inside, mass);
  return {
    pieces: spans.map((span, j) => ({ from: span.from, to: span.to, mass: mass[j] ?? 0 })),
    largestGradient: Math.max(...gradient) - ages.length,
  };
}

/** Mass is spread evenly within an interval; past the last finite mass the share is 1, or null where some lies beyond. */
export function shareBy(estimate: SlowNpmle, age: number): number | null {
  const finite = finitePieces(estimate);
  const last = Math.max(...finite.map((piece) => piece.to));
  if (age > last) return estimate.pieces.some((piece) => piece.to === Infinity && piece.mass > NO_MASS) ? null : 1;
  let share = 0;
  for (const { from, to, mass } of finite) {
    if (age >= to) share += mass;
    else if (age > from) share += (mass * (age - from)) / (to - from);
  }
  return share;
}

/** First age at which the share met reaches p; null where it never does. */
export function percentile(estimate: SlowNpmle, p: number): number | null {
  let below = 0;
  for (const { from, to, mass } of finitePieces(estimate)) {
    const missing = p - PERCENTILE_TOLERANCE - below;
    if (missing <= mass) return from + ((to - from) * Math.max(0, missing)) / mass;
    below += mass;
  }
  return null;
}

function finitePieces(estimate: SlowNpmle): Piece[] {
  return estimate.pieces.filter((piece) => piece.to < Infinity && piece.mass > NO_MASS).sort((a, b) => a.to - b.to);
}

/** A day that is known is the half day before its end: so it can share an end with (a, b] and still be told apart. */
function startOf({ after, by }: AgeInterval): number {
  return after === by ? after - 0.5 : after;
}

function endOf({ by }: AgeInterval): number {
  return by ?? Infinity;
}

/** From a start to the nearest end, where no other start lies between. */
function innermost(ages: readonly AgeInterval[]): { start: number; from: number; to: number }[] {
  const starts = [...new Set(ages.map(startOf))].sort((a, b) => a - b);
  return starts.flatMap((start) => {
    const to = Math.min(...ages.map(endOf).filter((end) => end > start));
    if (starts.some((other) => other > start && other < to)) return [];
    return [{ start, from: Number.isInteger(start) ? start : to, to }];
  });
}

/** Each child's weight is shared out over the intervals open to it by the mass they hold, again and again. */
function selfConsistent(inside: readonly (readonly number[])[], pieces: number): number[] {
  let mass = Array.from({ length: pieces }, () => 1 / pieces);
  for (let round = 0; round < 1000; round += 1) {
    const gradient = gradientOf(inside, mass);
    mass = mass.map((each, j) => (each * (gradient[j] ?? 0)) / inside.length);
  }
  return mass;
}

/** Newton steps on the intervals that hold mass; one that empties is put down, one whose gradient is too high taken up. */
function climbed(inside: readonly (readonly number[])[], start: readonly number[]): number[] {
  const n = inside.length;
  const mass = start.map((each) => (each > 1e-5 ? each : 0));
  const held = new Set(mass.flatMap((each, j) => (each > 0 ? [j] : [])));
  for (let round = 0; round < 10_000; round += 1) {
    const gradient = gradientOf(inside, mass);
    const excess = gradient.map((each) => each - n);
    if ([...held].every((j) => Math.abs(excess[j] ?? 0) < 1e-10 * n)) {
      const highest = excess.indexOf(Math.max(...excess));
      if ((excess[highest] ?? 0) <= 1e-9 * n) return mass;
      held.add(highest);
    }
    step(inside, mass, held, excess);
  }
  throw new RangeError("slowNpmle: the climb did not arrive");
}

/** One step up sum(log f) - n sum(mass), whose top is where the masses sum to 1; changes `mass` and `held`. */
function step(inside: readonly (readonly number[])[], mass: number[], held: Set<number>, excess: number[]): void {
  const places = [...held];
  const direction = solve(
    curvature(inside, mass, places),
    places.map((j) => excess[j] ?? 0),
  );
  const moved = (length: number): number[] => {
    const next = [...mass];
    places.forEach((j, k) => (next[j] = (mass[j] ?? 0) + length * (direction[k] ?? 0)));
    return next;
  };
  const room = places.map((j, k) => ((direction[k] ?? 0) < 0 ? (mass[j] ?? 0) / -(direction[k] ?? 0) : Infinity));
  const nearest = Math.min(...room);
  let length = Math.min(1, nearest);
  const height = heightOf(inside, mass);
  while (length > 1e-12 && heightOf(inside, moved(length)) < height - 1e-13 * Math.abs(height)) length /= 2;
  const next = moved(length);
  places.forEach((j, k) => {
    mass[j] = next[j] ?? 0;
    if (length !== nearest || (room[k] ?? 0) > nearest) return;
    mass[j] = 0;
    held.delete(j);
  });
}

/** sum over children of 1/f for the intervals open to them. */
function gradientOf(inside: readonly (readonly number[])[], mass: readonly number[]): number[] {
  const gradient = mass.map(() => 0);
  for (const row of inside) {
    const f = likelihoodOf(row, mass);
    row.forEach((open, j) => (gradient[j] = (gradient[j] ?? 0) + open / f));
  }
  return gradient;
}

/** Less the second derivative. */
function curvature(inside: readonly (readonly number[])[], mass: readonly number[], places: number[]): number[][] {
  const matrix = places.map(() => places.map(() => 0));
  for (const row of inside) {
    const f = likelihoodOf(row, mass);
    places.forEach((j, a) => {
      const line = matrix[a] ?? [];
      places.forEach((k, b) => (line[b] = (line[b] ?? 0) + ((row[j] ?? 0) * (row[k] ?? 0)) / (f * f)));
    });
  }
  return matrix;
}

function heightOf(inside: readonly (readonly number[])[], mass: readonly number[]): number {
  let height = -inside.length * mass.reduce((sum, each) => sum + each, 0);
  for (const row of inside) height += Math.log(Math.max(likelihoodOf(row, mass), Number.MIN_VALUE));
  return height;
}

function likelihoodOf(row: readonly number[], mass: readonly number[]): number {
  return row.reduce((sum, open, j) => sum + open * (mass[j] ?? 0), 0);
}
