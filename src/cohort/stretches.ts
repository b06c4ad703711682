import type { Cohort } from "./cohort";
import { EdgeDays } from "./edge-days";

/** Places of the two age bases in a pair. */
export const CORRECTED = 0;
export const CHRONOLOGICAL = 1;

/** What wants to see the looks of every child, stretch by stretch. */
export interface StretchReader {
  /** Looks `from` to `to` (not included) of one child, all of them in one band by its corrected and one by its chronological age. */
  stretch(from: number, to: number, correctedBand: number, chronologicalBand: number): void;
  endOfChild(): void;
}

/**
 * Walks all looks once. Looks stand in day order and age never falls, so a child's days at the band edges cut its looks
 * into stretches, and within a stretch no look needs a date, a correction or a comparison of its own.
 */
export function walkStretches(
  cohort: Pick<Cohort, "clocks" | "looks">,
  edges: readonly number[],
  reader: StretchReader,
) {
  const edgeDays = new EdgeDays(cohort.clocks, edges);
  const corrected = new Float64Array(edges.length + 1).fill(Infinity);
  const chronological = corrected.slice();
  cohort.clocks.forEach((clock, child) => {
    edgeDays.fill(clock, "corrected", corrected);
    if (clock.stops > clock.birth) edgeDays.fill(clock, "chronological", chronological);
    else chronological.set(corrected);
    walkChild(cohort, child, corrected, chronological, reader);
    reader.endOfChild();
  });
}

function walkChild(
  { looks }: Pick<Cohort, "looks">,
  child: number,
  corrected: Float64Array,
  chronological: Float64Array,
  reader: StretchReader,
): void {
  const { day, offsets } = looks;
  const end = offsets[child + 1] as number;
  let correctedBand = 0;
  let chronologicalBand = 0;
  let from = offsets[child] as number;
  while (from < end) {
    const first = day[from] as number;
    while (first >= (corrected[correctedBand] as number)) correctedBand += 1;
    while (first >= (chronological[chronologicalBand] as number)) chronologicalBand += 1;
    const until = Math.min(corrected[correctedBand] as number, chronological[chronologicalBand] as number);
    let to = from + 1;
    while (to < end && (day[to] as number) < until) to += 1;
    reader.stretch(from, to, correctedBand, chronologicalBand);
    from = to;
  }
}
