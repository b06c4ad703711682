import { randomFrom } from "./random";
import { AliasTable } from "./scan-alias";
import { type ScanShape, ScanWindows, type SeenWindow } from "./scan-windows";

/** Events that chance throws over places and periods by the same weights. */
export interface ScanStratum {
  /** How many there are; every replicate throws as many. */
  readonly draws: number;
  /** Of each place and period, in this order. One array may serve several strata. */
  readonly weights: Float64Array;
  /** The layers in which each of its events counts. */
  readonly layers: readonly number[];
}

export interface ScanInput {
  readonly shape: ScanShape;
  /** Of each layer, place and period, in this order. */
  readonly observed: Int32Array;
  readonly strata: readonly ScanStratum[];
  /** The same events in finer strata, for a second p that leaves each of them more of what it was (its period). */
  readonly finer?: readonly ScanStratum[];
}

export interface ScanOptions {
  /** Periods of the longest window. */
  readonly maxWidth: number;
  readonly replicates: number;
  readonly seed: number;
}

export interface ScannedWindow extends SeenWindow {
  /** Chance that any window of any layer is at least as unlikely where nothing clusters: (r + 1) / (replicates + 1). */
  readonly p: number;
  /** The same over replicates of the finer strata, with the same ratios and expected numbers; null where there are none. */
  readonly pFiner: number | null;
}

export interface Scan {
  /** Every window with more than expected, most likely first. */
  readonly windows: readonly ScannedWindow[];
  /** How many were looked at. */
  readonly windowCount: number;
}

/** Ratios nearer than this count as equal: the same counts can be added up in another order. */
const EQUAL_WITHIN = 1e-9;

/**
 * Where, and in which consecutive periods, more events fell than expected, with one p for all windows together.
 *
 * For c seen and e expected in a window and C in its layer: c ln(c / e) + (C - c) ln((C - c) / (C - e)) where c > e. The
 * replicates throw every event again, each stratum by its own weights, so that the totals of strata and layers stand.
 *
 * Source: Kulldorff (1997), Commun Stat Theory Methods 26:1481-1496; p by ranks: Dwass (1957), Ann Math Stat 28:181-187.
 *
 * @throws {RangeError} when columns do not fit the shape, an option is not a whole number above 0, or the observed numbers
 * are not those of the strata
 */
export function scan({ shape, observed, strata, finer }: ScanInput, { maxWidth, replicates, seed }: ScanOptions): Scan {
  refuse(shape, observed, strata, [maxWidth, replicates]);
  if (finer) refuse(shape, observed, finer, [maxWidth, replicates]);
  const totals = layerTotals(shape, strata);
  const windows = new ScanWindows(shape, maxWidth, expectedCells(shape, strata), totals);
  const seen = windows.seen(observed);
  const maximaOf = (drawn: readonly ScanStratum[]) =>
    seen.length === 0 ? new Float64Array(0) : replicateMaxima(shape, drawn, windows, replicates, seed);
  const [maxima, finerMaxima] = [maximaOf(strata), finer ? maximaOf(finer) : null];
  const scanned = seen.map((window) => ({
    ...window,
    p: rankOf(window.logLikelihoodRatio, maxima),
    pFiner: finerMaxima ? rankOf(window.logLikelihoodRatio, finerMaxima) : null,
  }));
  return { windows: scanned, windowCount: windows.count };
}

/** The expected number of each layer, place and period, in this order. */
export function expectedCells({ layers, places, periods }: ScanShape, strata: readonly ScanStratum[]): Float64Array {
  const cells = places * periods;
  const expected = new Float64Array(layers * cells);
  for (const { draws, weights, layers: counted } of strata) {
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    for (const layer of counted) {
      for (let cell = 0; cell < cells; cell += 1) expected[layer * cells + cell]! += (draws * weights[cell]!) / total;
    }
  }
  return expected;
}

/** The largest ratio of each replicate, rising. */
function replicateMaxima(
  { places, periods, layers }: ScanShape,
  strata: readonly ScanStratum[],
  windows: ScanWindows,
  replicates: number,
  seed: number,
): Float64Array {
  const random = randomFrom(seed);
  const tables = new Map(
    [...new Set(strata.map(({ weights }) => weights))].map((each) => [each, new AliasTable(each)]),
  );
  const counts = new Int32Array(layers * places * periods);
  const maxima = Float64Array.from({ length: replicates }, () => {
    counts.fill(0);
    for (const { draws, weights, layers: counted } of strata) {
      const table = tables.get(weights) as AliasTable;
      for (let draw = 0; draw < draws; draw += 1) {
        const cell = table.draw(random.nextUnit());
        for (const layer of counted) counts[layer * places * periods + cell]! += 1;
      }
    }
    return windows.largest(counts);
  });
  return maxima.sort();
}

function rankOf(ratio: number, rising: Float64Array): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle]! >= ratio - EQUAL_WITHIN) high = middle;
    else low = middle + 1;
  }
  return (rising.length - low + 1) / (rising.length + 1);
}

function layerTotals({ layers }: ScanShape, strata: readonly ScanStratum[]): number[] {
  return Array.from({ length: layers }, (_, layer) =>
    strata.reduce((sum, { draws, layers: counted }) => sum + (counted.includes(layer) ? draws : 0), 0),
  );
}

function refuse(
  shape: ScanShape,
  observed: Int32Array,
  strata: readonly ScanStratum[],
  options: readonly number[],
): void {
  const { layers, places, periods } = shape;
  const isWhole = (value: number) => Number.isInteger(value) && value >= 1;
  if (![layers, places, periods, ...options].every(isWhole)) {
    throw new RangeError("scan: sizes, width and replicates are whole numbers above 0");
  }
  const cells = places * periods;
  if (observed.length !== layers * cells || strata.some(({ weights }) => weights.length !== cells)) {
    throw new RangeError("scan: columns do not fit the places and periods");
  }
  layerTotals(shape, strata).forEach((total, layer) => {
    const seen = observed.subarray(layer * cells, (layer + 1) * cells).reduce((sum, count) => sum + count, 0);
    if (seen !== total) throw new RangeError(`scan: layer ${layer} holds ${seen} events, its strata ${total}`);
  });
  refuseImpossible(shape, observed, strata);
}

function refuseImpossible(
  { layers, places, periods }: ScanShape,
  observed: Int32Array,
  strata: readonly ScanStratum[],
) {
  const cells = places * periods;
  for (let at = 0; at < layers * cells; at += 1) {
    if (observed[at]! < 0) throw new RangeError("scan: an observed number is negative");
    if (observed[at] === 0) continue;
    const layer = Math.floor(at / cells);
    const isPossible = strata.some(
      ({ draws, weights, layers: counted }) => draws > 0 && counted.includes(layer) && weights[at % cells]! > 0,
    );
    if (!isPossible) throw new RangeError("scan: something was observed where nothing is expected");
  }
}
