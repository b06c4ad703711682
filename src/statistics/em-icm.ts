import type { Innermost } from "./innermost";
import { gradientAt, largest, type MassWorkspace } from "./mass-workspace";
import { pooledRising } from "./pool-adjacent";

export interface MassFit {
  readonly iterations: number;
  /** largest gradient over the innermost intervals, less n; 0 at the optimum */
  readonly largestGradient: number;
}

const MOST_HALVINGS = 20;
/** A step is kept while the slope at its end is not steeper downhill than this share of the slope uphill at its start. */
const OVERSHOOT = 0.5;

/**
 * Places mass on the innermost intervals so that the likelihood of the observed intervals is greatest.
 *
 * Each round makes one self-consistency (EM) step and one iterative convex minorant step: a Newton step with the
 * diagonal of the second derivatives, made to rise again by weighted pooling, and halved until it does not overshoot.
 * It stops when no innermost interval has a gradient more than `stopAt` above n: that number bounds how much
 * log-likelihood is still missing, which a small change from round to round does not.
 *
 * Source: Wellner & Zhan (1997), J Am Stat Assoc 92:945-959; the stopping rule: Gentleman & Geyer (1994), Biometrika 81:618-623.
 *
 * `workspace.mass` must start above 0 everywhere and sum to 1; it is improved in place.
 */
export function placeMass(
  cover: Innermost,
  n: number,
  workspace: MassWorkspace,
  stopAt: number,
  mostRounds: number,
): MassFit {
  gradientAt(workspace.mass, cover, workspace, workspace.gradient);
  let gap = largest(workspace.gradient, cover.size) - n;
  let rounds = 0;
  while (gap > stopAt && rounds < mostRounds) {
    selfConsistencyStep(cover.size, n, workspace);
    gradientAt(workspace.mass, cover, workspace, workspace.gradient);
    gap = largest(workspace.gradient, cover.size) - n;
    if (gap > stopAt && minorantStep(cover, workspace)) gap = largest(workspace.gradient, cover.size) - n;
    rounds += 1;
  }
  return { iterations: rounds, largestGradient: gap };
}

function selfConsistencyStep(size: number, n: number, workspace: MassWorkspace): void {
  let sum = 0;
  for (let index = 0; index < size; index += 1) {
    const mass = (workspace.mass[index]! * workspace.gradient[index]!) / n;
    workspace.mass[index] = mass;
    sum += mass;
  }
  for (let index = 0; index < size; index += 1) workspace.mass[index]! /= sum;
}

/** True when a step was taken; `workspace.mass` and `workspace.gradient` are then those after it. */
function minorantStep(cover: Innermost, workspace: MassWorkspace): boolean {
  const { mass, next, gradient, nextGradient, target } = workspace;
  const size = cover.size;
  aim(size, workspace);
  for (let index = 0; index < size; index += 1) target[index]! -= mass[index]!;
  const uphill = alongDirection(gradient, target, size);
  if (!(uphill > 0)) return false;
  for (let halving = 0, length = 1; halving < MOST_HALVINGS; halving += 1, length /= 2) {
    for (let index = 0; index < size; index += 1) next[index] = Math.max(0, mass[index]! + length * target[index]!);
    gradientAt(next, cover, workspace, nextGradient);
    if (alongDirection(nextGradient, target, size) >= -OVERSHOOT * uphill) {
      keep(size, workspace);
      return true;
    }
  }
  return false;
}

function keep(size: number, workspace: MassWorkspace): void {
  for (let index = 0; index < size; index += 1) {
    workspace.mass[index] = workspace.next[index]!;
    workspace.gradient[index] = workspace.nextGradient[index]!;
  }
}

/** Leaves in `workspace.target` the masses that the full minorant step aims at. */
function aim(size: number, workspace: MassWorkspace): void {
  const { gradient, cumulative, curvature, target } = workspace;
  for (let edge = 1; edge < size; edge += 1) {
    target[edge] = cumulative[edge]! + (gradient[edge - 1]! - gradient[edge]!) / curvature[edge]!;
  }
  pooledRising(target, curvature, 1, size, workspace);
  let below = 0;
  for (let index = 0; index < size; index += 1) {
    const share = index + 1 === size ? 1 : Math.min(1, Math.max(0, target[index + 1]!));
    target[index] = share - below;
    below = share;
  }
}

function alongDirection(gradient: Float64Array, direction: Float64Array, size: number): number {
  let sum = 0;
  for (let index = 0; index < size; index += 1) sum += gradient[index]! * direction[index]!;
  return sum;
}
