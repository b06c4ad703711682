export const USUAL_EDGES: readonly number[] = [0, 3, 6, 9, 12, 18, 24, 36];

/**
 * The half-open band `[from, to)` that an age in months falls in: 0 is before the first edge, `edges.length` is at or
 * above the last.
 */
export function bandIndex(months: number, edges: readonly number[]): number {
  let band = 0;
  while (band < edges.length && months >= (edges[band] as number)) band += 1;
  return band;
}

/** `before 0 months`, `6 to <9 months`, `36 months and over`, by the index that `bandIndex` gives. */
export function bandLabel(band: number, edges: readonly number[]): string {
  if (band <= 0) return `before ${edges[0]} months`;
  if (band >= edges.length) return `${edges[edges.length - 1]} months and over`;
  return `${edges[band - 1]} to <${edges[band]} months`;
}
