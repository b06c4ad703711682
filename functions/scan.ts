import { inCells } from "./answer";
import { scanCells } from "./convert/scan-cells";
import { remembered } from "./memo";

/**
 * Where, and in which consecutive periods, more was counted than the population leads you to expect.
 * @customfunction SCAN
 * @cancelable
 * @param counts Counts: a row for each place, a column for each period
 * @param population Children, or child-months, of the same shape
 * @param [maxWidth] Periods of the longest window; half of them when left out
 * @param [replicates] Random repeats behind p; 999 when left out
 * @param [seed] A whole number that fixes the random repeats
 * @returns Place, first and last period, observed, expected, log-likelihood ratio, p; most likely first
 */
export function scan(counts: any[][], population: any[][], maxWidth?: any, replicates?: any, seed?: any): any[][] {
  return inCells(() =>
    remembered("SCAN", [counts, population, maxWidth, replicates, seed], () =>
      scanCells(counts, population, { maxWidth, replicates, seed }),
    ),
  );
}
