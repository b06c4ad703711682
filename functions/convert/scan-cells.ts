import { scan } from "../../src/statistics/scan";
import type { AnswerCell } from "../answer";
import { invalid, notEstimable, outOfRange } from "../failure";
import { USUAL_REPLICATES } from "../work";
import { type InRange, isEmpty, rangeOf, singleOf } from "./cells";
import { eachRow } from "./each-row";
import { seedOf } from "./options";
import { countFrom, numberFrom } from "./values";

const MOST_REPLICATES = 99_999;
const LISTED = 20;

interface ScanArguments {
  readonly maxWidth: unknown;
  readonly replicates: unknown;
  readonly seed: unknown;
}

/** Place, First, Last (from 1), Observed, Expected, Log-likelihood ratio, p of the 20 most likely windows. */
export function scanCells(counts: unknown, population: unknown, options: ScanArguments): AnswerCell[][] {
  const observed = eachRow(rangeOf(counts, "counts"), (row) => row.map((cell) => countFrom(cell, "counts")));
  const weights = eachRow(rangeOf(population, "population"), (row) => row.map(populationFrom));
  refuseOtherShape(observed, weights);
  const [places, periods] = [observed.length, observed[0]?.length ?? 0];
  const draws = observed.flat().reduce((sum, count) => sum + count, 0);
  if (draws === 0) throw notEstimable("counts are all 0: there is nothing to find.");
  const found = scan(
    {
      shape: { layers: 1, places, periods },
      observed: Int32Array.from(observed.flat()),
      strata: [{ draws, weights: Float64Array.from(weights.flat()), layers: [0] }],
    },
    {
      maxWidth: wholeOf(options.maxWidth, "maxWidth", Math.max(1, Math.floor(periods / 2)), periods),
      replicates: wholeOf(options.replicates, "replicates", USUAL_REPLICATES, MOST_REPLICATES),
      seed: seedOf(options.seed),
    },
  );
  if (found.windows.length === 0) throw notEstimable("No window has more than expected.");
  return found.windows
    .slice(0, LISTED)
    .map((each) => [
      each.place + 1,
      each.first + 1,
      each.last + 1,
      each.observed,
      each.expected,
      each.logLikelihoodRatio,
      each.p,
    ]);
}

function populationFrom(cell: InRange[number][number]): number {
  const people = numberFrom(cell, "population");
  if (people < 0) throw outOfRange("population cannot be below 0.");
  return people;
}

function refuseOtherShape(observed: readonly number[][], weights: readonly number[][]): void {
  const same = observed.length === weights.length && observed[0]?.length === weights[0]?.length;
  if (!same) throw invalid("counts and population have different sizes: give both the same rows and columns.");
  observed.forEach((row, at) => {
    const empty = row.findIndex((count, column) => count > 0 && weights[at]?.[column] === 0);
    if (empty >= 0) throw invalid(`Row ${at + 1}: column ${empty + 1} has a count and no population.`);
  });
}

/** A whole number from 1 to `most`; 0 stands for an empty cell and gives the usual one. */
function wholeOf(argument: unknown, name: string, usual: number, most: number): number {
  const cell = singleOf(argument, name);
  if (isEmpty(cell)) return usual;
  const value = numberFrom(cell, name);
  if (!Number.isInteger(value)) throw invalid(`${name} is a whole number.`);
  if (value < 1 || value > most) throw outOfRange(`${name} goes from 1 to ${most}.`);
  return value;
}
