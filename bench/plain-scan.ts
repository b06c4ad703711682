import { randomFrom } from "../src/statistics/random";
import type { ScanInput, ScanOptions } from "../src/statistics/scan";
import { AliasTable } from "../src/statistics/scan-alias";

interface Event {
  readonly place: number;
  readonly period: number;
  readonly layers: readonly number[];
}

export interface PlainWindow {
  readonly layer: number;
  readonly place: number;
  readonly first: number;
  readonly last: number;
  readonly ratio: number;
  readonly p: number;
}

/** Ratios nearer than this count as equal: the same counts can be added up in another order. */
const EQUAL_WITHIN = 1e-9;

/**
 * The scan as it is written down: every window goes through all events, in the observed data and in every replicate. The
 * events are thrown by the same table from the same seed, so that both sides see the same replicates.
 */
export function plainScan(input: ScanInput, options: ScanOptions): PlainWindow[] {
  const expected = expectedNumbers(input);
  const observed = windowRatios(input, options.maxWidth, observedEvents(input), expected);
  const random = randomFrom(options.seed);
  const tables = input.strata.map(({ weights }) => new AliasTable(weights));
  const maxima: number[] = [];
  for (let replicate = 0; replicate < options.replicates; replicate += 1) {
    const thrown: Event[] = [];
    input.strata.forEach(({ draws, layers }, stratum) => {
      for (let draw = 0; draw < draws; draw += 1) {
        const cell = tables[stratum]!.draw(random.nextUnit());
        const { periods } = input.shape;
        thrown.push({ place: Math.floor(cell / periods), period: cell % periods, layers });
      }
    });
    const ratios = windowRatios(input, options.maxWidth, thrown, expected);
    maxima.push(Math.max(0, ...ratios.map(({ ratio }) => ratio)));
  }
  return observed
    .map((window) => {
      const reached = maxima.filter((largest) => largest >= window.ratio - EQUAL_WITHIN).length;
      return { ...window, p: (reached + 1) / (options.replicates + 1) };
    })
    .sort((a, b) => b.ratio - a.ratio);
}

type Ratio = Omit<PlainWindow, "p">;

function windowRatios(
  { shape, strata }: ScanInput,
  maxWidth: number,
  events: readonly Event[],
  expected: readonly (readonly (readonly number[])[])[],
): Ratio[] {
  const found: Ratio[] = [];
  for (let layer = 0; layer < shape.layers; layer += 1) {
    const total = strata.filter((stratum) => stratum.layers.includes(layer)).reduce((sum, each) => sum + each.draws, 0);
    for (let place = 0; place < shape.places; place += 1) {
      for (let first = 0; first < shape.periods; first += 1) {
        for (let last = first; last < Math.min(shape.periods, first + maxWidth); last += 1) {
          let c = 0;
          for (const event of events) {
            if (event.place === place && event.period >= first && event.period <= last && event.layers.includes(layer))
              c += 1;
          }
          let e = 0;
          for (let period = first; period <= last; period += 1) e += expected[layer]![place]![period]!;
          if (c - e <= 1e-12 * c) continue;
          const outside = total - c;
          const beyond = outside > 0 ? outside * Math.log(outside / (total - e)) : 0;
          found.push({ layer, place, first, last, ratio: c * Math.log(c / e) + beyond });
        }
      }
    }
  }
  return found;
}

function expectedNumbers({ shape, strata }: ScanInput): number[][][] {
  return Array.from({ length: shape.layers }, (_, layer) =>
    Array.from({ length: shape.places }, (_, place) =>
      Array.from({ length: shape.periods }, (_, period) => {
        let expected = 0;
        for (const { draws, weights, layers } of strata) {
          if (!layers.includes(layer)) continue;
          expected += (draws * weights[place * shape.periods + period]!) / weights.reduce((sum, each) => sum + each, 0);
        }
        return expected;
      }),
    ),
  );
}

/** One event for each that a layer counts, in that layer alone: only the counts matter. */
function observedEvents({ shape, observed }: ScanInput): Event[] {
  const events: Event[] = [];
  observed.forEach((count, at) => {
    const layer = Math.floor(at / (shape.places * shape.periods));
    const place = Math.floor(at / shape.periods) % shape.places;
    for (let event = 0; event < count; event += 1) events.push({ place, period: at % shape.periods, layers: [layer] });
  });
  return events;
}
