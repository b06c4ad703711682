import { BandBits } from "./band-bits";
import type { Cohort } from "./cohort";
import { CHRONOLOGICAL, CORRECTED, type StretchReader, walkStretches } from "./stretches";

const RESULT_COUNT = 4;

/** Counts by skill and age band; band b is that of `bandIndex`, so there are `edges.length + 1`. */
export interface LooksByBand extends LookCounts, ChildCounts {}

export interface LookCounts {
  readonly bandCount: number;
  /** Looks with each result, at `(skill * bandCount + band) * 4 + result`. */
  readonly looks: Uint32Array;
}

export interface ChildCounts {
  readonly bandCount: number;
  /** Children with a look in the band, at `skill * bandCount + band`. */
  readonly childrenSeen: Uint32Array;
  /** Children with a look in the band whose result is met, in the same places. */
  readonly childrenMet: Uint32Array;
}

type Counted = Pick<Cohort, "clocks" | "looks" | "skills">;

/**
 * What was looked at, and how often: looks by skill, band and result, and the different children behind them.
 * The band is that of the child's age on the day of the look, on the skill's age basis.
 *
 * @throws {RangeError} when there is no edge, or the edges do not rise
 */
export function looksByBand(cohort: Counted, edges: readonly number[]): LooksByBand {
  return { ...countLooks(cohort, edges), ...countChildren(cohort, edges) };
}

/** Looks by skill, band and result. */
export function countLooks(cohort: Counted, edges: readonly number[]): LookCounts {
  refuseEdges(edges);
  const counter = new LookCounter(cohort, edges.length + 1);
  walkStretches(cohort, edges, counter);
  return { bandCount: edges.length + 1, looks: counter.looks };
}

/** Different children seen and met, by skill and band. */
export function countChildren(cohort: Counted, edges: readonly number[]): ChildCounts {
  refuseEdges(edges);
  const bits = new BandBits(cohort.looks, basisOfSkills(cohort), edges.length + 1);
  walkStretches(cohort, edges, bits);
  return { bandCount: edges.length + 1, ...bits.counts() };
}

class LookCounter implements StretchReader {
  readonly looks: Uint32Array;
  private readonly basis: Uint8Array;
  private readonly bandStart = new Int32Array(2);

  constructor(
    private readonly cohort: Counted,
    private readonly bandCount: number,
  ) {
    this.looks = new Uint32Array(cohort.skills.length * bandCount * RESULT_COUNT);
    this.basis = basisOfSkills(cohort);
  }

  stretch(from: number, to: number, correctedBand: number, chronologicalBand: number): void {
    const { skill, result } = this.cohort.looks;
    const { looks, basis, bandStart } = this;
    const cellsOfSkill = this.bandCount * RESULT_COUNT;
    bandStart[CORRECTED] = correctedBand * RESULT_COUNT;
    bandStart[CHRONOLOGICAL] = chronologicalBand * RESULT_COUNT;
    for (let at = from; at < to; at += 1) {
      const which = skill[at] as number;
      looks[which * cellsOfSkill + (bandStart[basis[which] as number] as number) + (result[at] as number)]! += 1;
    }
  }

  endOfChild(): void {}
}

function basisOfSkills({ skills }: Counted): Uint8Array {
  return Uint8Array.from(skills, ({ ageBasis }) => (ageBasis === "corrected" ? CORRECTED : CHRONOLOGICAL));
}

function refuseEdges(edges: readonly number[]): void {
  const rises = edges.every((edge, at) => Number.isFinite(edge) && (at === 0 || edge > (edges[at - 1] as number)));
  if (edges.length === 0 || !rises)
    throw new RangeError("looksByBand: the edges must be numbers that rise, one at least");
}
