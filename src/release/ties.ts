import type { LedgerEntryBody } from "./ledger-entry";
import type { Drafting } from "./draft/drafting";
import { withSets } from "./sets/with-sets";
import type { CountSystem } from "./system";
import { Combined } from "./ties/combined";
import { missingBands, missingPeriods } from "./ties/known-zeros";
import { edgesIn, notCovered, type PresentRelease } from "./ties/not-covered";
import { reachable } from "./ties/reach";
import { AGES, PERIODS } from "./ties/spans";
import { splitSpans } from "./ties/split";

export interface Tied {
  /** Cells of the present release first, each at the index it had. */
  readonly system: CountSystem;
  /** What is not tied, one sentence a kind; empty where there is no earlier release. */
  readonly notCovered: readonly string[];
}

/** The same with all that the counts say of one another. */
export interface TiedSets extends Tied {
  readonly declared: CountSystem;
  /** False where the counts of skills are tied a few at a time only. */
  readonly isFull: boolean;
}

/**
 * The counts of a release together with those of every earlier one that they could be worked out from, or that could be
 * worked out from them (METHOD.md, section 7).
 */
export function tieLedger(system: CountSystem, entries: readonly LedgerEntryBody[], now: PresentRelease): Tied {
  const combined = combine(system, entries, now);
  return { system: reachable(combined), notCovered: notCovered(combined, entries, now) };
}

/** @param drafting - the records that the counts are of */
export function tieSets(
  system: CountSystem,
  entries: readonly LedgerEntryBody[],
  now: PresentRelease,
  drafting: Drafting,
): TiedSets {
  const combined = combine(system, entries, now);
  const { system: all, isFull } = withSets(combined, drafting, combined.ownCells);
  const { ownCells, ownEquations } = combined;
  return {
    system: reachable(combined),
    declared: reachable({ ...all, ownCells, ownEquations }),
    isFull,
    notCovered: notCovered(combined, entries, now),
  };
}

function combine(system: CountSystem, entries: readonly LedgerEntryBody[], now: PresentRelease): Combined {
  const combined = new Combined(system);
  const exact = entries.filter(({ rule }) => rule.method === "hide");
  exact.forEach((entry) => combined.addEntry(entry));
  const edges = [now, ...exact].map(({ definition }) => edgesIn(definition));
  if (edges.some((each) => String(each) !== String(edges[0]))) {
    combined.changed += splitSpans(combined, AGES, now.minimumCell, missingBands(combined, edges));
  }
  if (exact.some(({ asOf, from }) => asOf !== now.asOf || from !== now.from)) {
    combined.changed += splitSpans(combined, PERIODS, now.minimumCell, missingPeriods(combined, edges));
  }
  return combined;
}
