import { ageMonthsOn, type AgeClock } from "../../age/correction";
import type { Day } from "../../age/day";
import { BOX, boxOn, hadAtFirstLook } from "../../cohort/boxes";
import { metBetween } from "../../cohort/interval";
import type { Attainment } from "../../cohort/state";
import { NO_DAY } from "../../records/records";
import type { TableContext } from "../../tables/context";

/** What is known of a skill from every look up to a day. */
export const KNOWN = { unseen: 0, never: 1, had: 2, interval: 3 } as const;

/** One skill of one child: how it stood on the day by which tables of boxes count the child, and what is known by a later day. */
export interface SkillStanding {
  /** 0: followed on the day; 1 and more: left, in the periods that begin before it; GONE: no table of boxes counts the child. */
  readonly stands: number;
  /** Edges up to the age on that day. */
  readonly band: number;
  readonly box: number;
  readonly known: number;
  /** Edges up to the age at the last look without it, and edges below the age at the first look with it. */
  readonly without: number;
  readonly met: number;
}

export const FOLLOWED = 0;
export const GONE = -1;

export function nameOfStanding({ stands, band, box, known, without, met }: SkillStanding): string {
  return `${stands},${band},${box},${known},${without},${met}`;
}

/** The boxes that go with what is known on the same day. A loss never takes back the first time that a skill was met. */
const BOXES: Readonly<Record<number, readonly number[]>> = {
  [KNOWN.unseen]: [BOX.notAssessed],
  [KNOWN.never]: [BOX.notMet, BOX.outOfDate],
  [KNOWN.had]: [BOX.hadAtFirstLook, BOX.lost],
  [KNOWN.interval]: [BOX.gained, BOX.lost],
};

/**
 * Every way a skill can stand on a day and be known on the same day: no look is above the child's own age, and the last
 * look without it comes before the first with it, or on the very day that it was met.
 *
 * @param stands - how children may stand beside those gone
 * @param hasExact - whether the very day on which a skill was met can be known: then nobody had it just before
 */
export function standingsOf(stands: readonly number[], edges: number, hasExact: boolean): SkillStanding[] {
  const counted = stands.flatMap((each) =>
    Array.from({ length: edges + 1 }, (_, band) =>
      knownUpTo(band, edges, hasExact).flatMap((known) =>
        BOXES[known.known]!.map((box) => ({ stands: each, band, box, ...known })),
      ),
    ).flat(),
  );
  const gone = knownUpTo(edges, edges, hasExact).map((known) => ({ stands: GONE, band: -1, box: -1, ...known }));
  return [...counted, ...gone];
}

type Known = Pick<SkillStanding, "known" | "without" | "met">;

/** @param oldest - edges up to the child's age */
function knownUpTo(oldest: number, edges: number, hasExact: boolean): Known[] {
  const ages = Array.from({ length: oldest + 1 }, (_, age) => age);
  const met = ages.flatMap((age) => [
    { known: KNOWN.had, without: 0, met: age },
    ...(hasExact ? [{ known: KNOWN.had, without: age, met: age }] : []),
    ...ages.filter((without) => without <= age).map((without) => ({ known: KNOWN.interval, without, met: age })),
  ]);
  const never = ages.map((without) => ({ known: KNOWN.never, without, met: edges }));
  return [{ known: KNOWN.unseen, without: 0, met: edges }, ...never, ...met];
}

/** Reads children of the records. @param edges - every edge at which some count of the day is cut */
export class StandingReader {
  constructor(
    private readonly context: TableContext,
    private readonly edges: readonly number[],
    private readonly known: Attainment,
  ) {}

  /** @param onDay - the day of the child's box and the looks up to it; null: gone */
  of(
    child: number,
    skill: number,
    stands: number,
    onDay: { readonly day: Day; readonly attainment: Attainment } | null,
  ): SkillStanding {
    const { cohort, settings } = this.context;
    const known = this.knownOf(child, skill);
    if (onDay === null) return { stands: GONE, band: -1, box: -1, ...known };
    const { day, attainment } = onDay;
    const box = boxOn(cohort, attainment, child, skill, day, settings.recheckDays);
    return { stands, band: this.upTo(this.ageOn(child, skill, day)), box, ...known };
  }

  private knownOf(child: number, skill: number): Known {
    const { cohort } = this.context;
    const cell = child * this.known.skillCount + skill;
    const between = metBetween(this.known, cell, cohort.clocks[child] as AgeClock);
    if (between === null) return { known: KNOWN.unseen, without: 0, met: this.edges.length };
    const metAge = between.by === null ? Infinity : this.ageOn(child, skill, between.by);
    const lastWithout = this.known.withoutDay[cell] as number;
    const withoutAge = lastWithout === NO_DAY ? -Infinity : this.ageOn(child, skill, lastWithout);
    const met = this.edges.filter((edge) => edge < metAge).length;
    const without = this.known.exact[cell] === 1 ? met : Math.min(met, this.upTo(withoutAge));
    if (between.by === null) return { known: KNOWN.never, without, met };
    const had = hadAtFirstLook(cohort, this.known, child, cell);
    return { known: had ? KNOWN.had : KNOWN.interval, without, met };
  }

  private ageOn(child: number, skill: number, day: Day): number {
    const { cohort } = this.context;
    return ageMonthsOn(cohort.clocks[child] as AgeClock, day, cohort.skills[skill]!.ageBasis);
  }

  private upTo(months: number): number {
    return this.edges.filter((edge) => edge <= months).length;
  }
}
