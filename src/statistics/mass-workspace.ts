import type { Innermost } from "./innermost";

/** Columns for placing mass on innermost intervals, made once and used round after round. */
export interface MassWorkspace {
  readonly mass: Float64Array;
  readonly next: Float64Array;
  readonly gradient: Float64Array;
  readonly nextGradient: Float64Array;
  readonly cumulative: Float64Array;
  readonly curvature: Float64Array;
  readonly target: Float64Array;
  readonly blockMean: Float64Array;
  readonly blockWeight: Float64Array;
  readonly blockEnd: Int32Array;
}

export function workspaceForMass(innermost: number): MassWorkspace {
  const column = () => new Float64Array(innermost + 1);
  return {
    mass: column(),
    next: column(),
    gradient: column(),
    nextGradient: column(),
    cumulative: column(),
    curvature: column(),
    target: column(),
    blockMean: column(),
    blockWeight: column(),
    blockEnd: new Int32Array(innermost + 1),
  };
}

/** Gradient of the log-likelihood in each mass, and the curvature in each cumulative share. */
export function gradientAt(
  mass: Float64Array,
  cover: Innermost,
  workspace: MassWorkspace,
  gradient: Float64Array,
): void {
  const { cumulative, curvature } = workspace;
  const { first, last, count, size, used } = cover;
  cumulative[0] = 0;
  for (let index = 0; index < size; index += 1) cumulative[index + 1] = cumulative[index]! + mass[index]!;
  gradient.fill(0, 0, size + 1);
  curvature.fill(0, 0, size + 1);
  for (let index = 0; index < used; index += 1) {
    const start = first[index]!;
    const end = last[index]! + 1;
    const share = end - start === 1 ? mass[start]! : cumulative[end]! - cumulative[start]!;
    const perShare = 1 / share;
    const slope = count[index]! * perShare;
    const bend = slope * perShare;
    gradient[start]! += slope;
    gradient[end]! -= slope;
    curvature[start]! += bend;
    curvature[end]! += bend;
  }
  for (let index = 1; index < size; index += 1) gradient[index]! += gradient[index - 1]!;
}

/** Largest of the first `size` values. */
export function largest(values: Float64Array, size: number): number {
  let most = -Infinity;
  for (let index = 0; index < size; index += 1) if (values[index]! > most) most = values[index]!;
  return most;
}
