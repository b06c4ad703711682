/** Workspace of `pooledRising`. */
export interface PoolWorkspace {
  readonly blockMean: Float64Array;
  readonly blockWeight: Float64Array;
  readonly blockEnd: Int32Array;
}

/**
 * Replaces values[from..to) by the nearest never-falling values, nearest by weighted squares: neighbours that fall are
 * pooled into their weighted mean until none falls.
 *
 * Source: Ayer, Brunk, Ewing, Reid & Silverman (1955), Ann Math Stat 26:641-647.
 */
export function pooledRising(
  values: Float64Array,
  weights: Float64Array,
  from: number,
  to: number,
  workspace: PoolWorkspace,
): void {
  const { blockMean, blockWeight, blockEnd } = workspace;
  let top = -1;
  for (let index = from; index < to; index += 1) {
    let mean = values[index]!;
    let weight = weights[index]!;
    while (top >= 0 && blockMean[top]! >= mean) {
      const both = weight + blockWeight[top]!;
      mean = (mean * weight + blockMean[top]! * blockWeight[top]!) / both;
      weight = both;
      top -= 1;
    }
    top += 1;
    blockMean[top] = mean;
    blockWeight[top] = weight;
    blockEnd[top] = index + 1;
  }
  for (let block = 0, index = from; block <= top; block += 1) {
    for (; index < blockEnd[block]!; index += 1) values[index] = blockMean[block]!;
  }
}
