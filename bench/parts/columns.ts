import { countChildren } from "../../src/cohort/looks-by-band";
import type { Observations } from "../../src/records/records";
import { cohortFrom, EDGES, idsOf, type Invented, inventedObservations } from "../observations";
import { ourChildCounts, ourIntervals } from "../ours";
import { atMost, milliseconds, type Row } from "../row";
import { timed } from "../timing";

const MILLION = 1_000_000;

/** Against the least any program could do, one pass over the columns, and against ourselves at a tenth of the size. */
export async function againstOnePass(): Promise<Row[]> {
  const small = await jobs(inventedObservations(MILLION));
  const invented = inventedObservations(10 * MILLION);
  const large = await jobs(invented);
  const pass = await timed(() => onePass(invented.observations), 9, 5);
  return [
    atMost(
      "Children seen and met on sorted columns, against one streaming pass over four columns, ten million rows",
      large.sorted / pass.ms,
      12,
      " times its time",
      `${milliseconds(large.sorted)} against ${milliseconds(pass.ms)}`,
    ),
    growth("Children seen and met by skill and band", small.counts, large.counts),
    growth("The interval in which each skill was met", small.intervals, large.intervals),
  ];
}

async function jobs(invented: Invented): Promise<{ sorted: number; counts: number; intervals: number }> {
  const ids = idsOf(invented);
  const cohort = cohortFrom(invented, ids);
  const sorted = await timed(() => countChildren(cohort, EDGES));
  const counts = await timed(() => ourChildCounts(invented, ids));
  const intervals = await timed(() => ourIntervals(invented, ids));
  return { sorted: sorted.ms, counts: counts.ms, intervals: intervals.ms };
}

function growth(job: string, smallMs: number, largeMs: number): Row {
  return atMost(
    `${job}, growth from a million rows to ten million`,
    Math.log10(largeMs / smallMs),
    1.1,
    " as exponent",
    `${milliseconds(smallMs)} to ${milliseconds(largeMs)}`,
  );
}

/** Folds the columns with bit operations, the cheapest there are. */
function onePass({ child, skill, day, result }: Observations): number {
  let folded = 0;
  for (let row = 0; row < child.length; row += 1) folded ^= child[row]! ^ skill[row]! ^ day[row]! ^ result[row]!;
  return folded;
}
