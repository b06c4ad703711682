/** Places by periods, in one or more layers that are scanned together (all referrals, those of one area, ...). */
export interface ScanShape {
  readonly layers: number;
  readonly places: number;
  readonly periods: number;
}

/** A place and consecutive periods in which more was seen than expected. */
export interface SeenWindow {
  readonly layer: number;
  readonly place: number;
  /** Both included, counted from 0. */
  readonly first: number;
  readonly last: number;
  readonly observed: number;
  readonly expected: number;
  readonly logLikelihoodRatio: number;
}

/** Expected numbers this close to all of the layer leave nothing outside the window to compare with. */
const ALL_OF_IT = 1e-9;
/** Sums of expected numbers are off by less than this share of them. */
const ROUNDING = 1e-12;

/**
 * Every window of one place by up to `maxWidth` consecutive periods. What never changes from one set of counts to the next
 * (logarithms of what is expected inside and outside, a table of c log c) is worked out once.
 */
export class ScanWindows {
  readonly count: number;
  private readonly expected: Float64Array;
  private readonly logExpected: Float64Array;
  private readonly logOutside: Float64Array;
  private readonly cLogC: Float64Array;

  /**
   * @param cells - expected number of each layer, place and period, in this order
   * @param totals - what was seen in each layer
   */
  constructor(
    private readonly shape: ScanShape,
    private readonly maxWidth: number,
    cells: Float64Array,
    private readonly totals: readonly number[],
  ) {
    this.expected = Float64Array.from(this.sums(cells));
    this.count = this.expected.length;
    this.logExpected = this.expected.map((expected) => Math.log(expected));
    const perLayer = this.count / shape.layers;
    this.logOutside = this.expected.map((expected, at) => Math.log(this.totalAt(at, perLayer) - expected));
    this.expected.forEach((expected, at) => {
      const total = this.totalAt(at, perLayer);
      if (total - expected <= ALL_OF_IT * total) this.expected[at] = Infinity;
    });
    this.cLogC = Float64Array.from({ length: Math.max(0, ...totals) + 1 }, (_, c) => (c === 0 ? 0 : c * Math.log(c)));
  }

  /** The largest log-likelihood ratio of any window; 0 where none holds more than expected. */
  largest(counts: Int32Array): number {
    const { layers, places, periods } = this.shape;
    const { expected, logExpected, logOutside, cLogC, maxWidth } = this;
    let best = 0;
    let window = 0;
    for (let row = 0; row < layers * places; row += 1) {
      const total = this.totals[Math.floor(row / places)] as number;
      for (let first = 0; first < periods; first += 1) {
        const end = Math.min(periods, first + maxWidth);
        let c = 0;
        for (let last = first; last < end; last += 1, window += 1) {
          c += counts[row * periods + last]!;
          if (c <= expected[window]!) continue;
          const outside = total - c;
          const ratio =
            cLogC[c]! - c * logExpected[window]! + cLogC[outside]! - (outside > 0 ? outside * logOutside[window]! : 0);
          if (ratio > best) best = ratio;
        }
      }
    }
    return best;
  }

  /** Every window with more than expected, most likely first; of equals the one that begins the list first. */
  seen(counts: Int32Array): SeenWindow[] {
    const found: SeenWindow[] = [];
    let window = 0;
    this.each((layer, place, first, last) => {
      const row = (layer * this.shape.places + place) * this.shape.periods;
      const observed = counts.subarray(row + first, row + last + 1).reduce((sum, c) => sum + c, 0);
      const expected = this.expected[window] as number;
      if (observed - expected > ROUNDING * observed) {
        const logLikelihoodRatio = this.ratioAt(window, observed, this.totals[layer] as number);
        found.push({ layer, place, first, last, observed, expected, logLikelihoodRatio });
      }
      window += 1;
    });
    return found.sort((a, b) => b.logLikelihoodRatio - a.logLikelihoodRatio);
  }

  private ratioAt(window: number, c: number, total: number): number {
    const outside = total - c;
    const beyond = outside > 0 ? outside * this.logOutside[window]! : 0;
    return this.cLogC[c]! - c * this.logExpected[window]! + this.cLogC[outside]! - beyond;
  }

  private totalAt(window: number, perLayer: number): number {
    return this.totals[Math.floor(window / perLayer)] as number;
  }

  private sums(cells: Float64Array): number[] {
    const sums: number[] = [];
    let running = 0;
    this.each((layer, place, first, last) => {
      const cell = cells[(layer * this.shape.places + place) * this.shape.periods + last]!;
      running = last === first ? cell : running + cell;
      sums.push(running);
    });
    return sums;
  }

  /** The one order of windows that everything here keeps to. */
  private each(visit: (layer: number, place: number, first: number, last: number) => void): void {
    const { layers, places, periods } = this.shape;
    for (let layer = 0; layer < layers; layer += 1) {
      for (let place = 0; place < places; place += 1) {
        for (let first = 0; first < periods; first += 1) {
          const end = Math.min(periods, first + this.maxWidth);
          for (let last = first; last < end; last += 1) visit(layer, place, first, last);
        }
      }
    }
  }
}
