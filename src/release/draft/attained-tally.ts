import { type AgeBasis, type AgeClock, ageMonthsOn } from "../../age/correction";
import type { Day } from "../../age/day";
import { hadAtFirstLook } from "../../cohort/boxes";
import { metBetween, metBetweenAges } from "../../cohort/interval";
import type { Drafting } from "./drafting";
import { Tally } from "./tally";

/** Positions of the counts of one skill: those looked at and how they stand, and those never looked at. */
export const ATTAINED = {
  children: 0,
  hadAtFirstLook: 1,
  interval: 2,
  notMet: 3,
  met: 4,
  neverLooked: 5,
  metAfterLast: 6,
} as const;
const ATTAINED_COUNT = 7;

/** A child who was looked at for a skill: days of age in (after, by], and its family. */
export interface Watched {
  readonly after: number;
  readonly by: number;
  readonly family: number;
}

/** Children ever followed, by skill, in every scope. */
export class AttainedTally {
  private readonly tally: Tally;
  private readonly watchedAt: Watched[][];

  constructor(
    private readonly drafting: Drafting,
    private readonly groupOf: Int32Array,
  ) {
    const size = drafting.scopes.list.length * drafting.context.cohort.skills.length;
    this.tally = new Tally(size * ATTAINED_COUNT);
    this.watchedAt = Array.from({ length: size }, () => []);
    for (const child of drafting.families.inOrder) if (groupOf[child]! >= 0) this.addChild(child);
  }

  of(scope: number, skill: number, column: number): ReturnType<Tally["of"]> {
    return this.tally.of(this.rowOf(scope, skill) * ATTAINED_COUNT + column);
  }

  watched(scope: number, skill: number): readonly Watched[] {
    return this.watchedAt[this.rowOf(scope, skill)] as Watched[];
  }

  private addChild(child: number): void {
    const { cohort, attainment } = this.drafting.context;
    const family = this.drafting.families.ofChild[child] as number;
    const clock = cohort.clocks[child] as AgeClock;
    const scopes = this.drafting.scopes.ofGroup[this.groupOf[child] as number] as readonly number[];
    cohort.skills.forEach(({ ageBasis }, skill) => {
      const cell = child * attainment.skillCount + skill;
      const between = metBetween(attainment, cell, clock);
      const had = between !== null && between.by !== null && hadAtFirstLook(cohort, attainment, child, cell);
      const columns = [...columnsOf(between?.by, had), ...this.afterLastEdge(between?.by ?? null, clock, ageBasis)];
      for (const scope of scopes) {
        const row = this.rowOf(scope, skill);
        for (const column of columns) this.tally.add(row * ATTAINED_COUNT + column, family);
        if (between) this.watchedAt[row]!.push({ ...metBetweenAges(between, clock, ageBasis), family });
      }
    });
  }

  private afterLastEdge(by: Day | null, clock: AgeClock, basis: AgeBasis): readonly number[] {
    const last = this.drafting.context.settings.edges.at(-1) as number;
    return by !== null && ageMonthsOn(clock, by, basis) > last ? [ATTAINED.metAfterLast] : [];
  }

  private rowOf(scope: number, skill: number): number {
    return scope * this.drafting.context.cohort.skills.length + skill;
  }
}

/** @param by - the day it was first seen; null: never seen; undefined: never looked at */
function columnsOf(by: number | null | undefined, had: boolean): readonly number[] {
  if (by === undefined) return [ATTAINED.neverLooked];
  if (by === null) return [ATTAINED.children, ATTAINED.notMet];
  return [ATTAINED.children, ATTAINED.met, had ? ATTAINED.hadAtFirstLook : ATTAINED.interval];
}
