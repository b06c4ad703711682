import { bandIndex } from "../../age/bands";
import { type AgeBasis, type AgeClock, ageMonthsOn } from "../../age/correction";
import { type Day, dayFromIso } from "../../age/day";
import { NOT_FOLLOWED } from "../../cohort/following";
import { NO_DAY } from "../../records/records";
import type { Drafting } from "../draft/drafting";
import type { KeyParts } from "../draft/keys";
import { Places } from "./places";

/** A count with what its key says. */
export interface KeyedCell {
  readonly cell: number;
  readonly parts: KeyParts;
}

/** In the program on the day; children who left stand above it, by the stretch of days in which they did; GONE before all of these. */
export const FOLLOWED = 0;
export const GONE = -1;
/** Not in the program up to the day, or not anymore for anybody who counts. */
export const NOBODY = -2;

/** One day as its counts cut it: who is in the program on it, who left in which stretch of days before it, and at what ages. */
export class ProgramDay {
  readonly places: Places;
  /** Of each child; -1: never in the program up to the day. */
  readonly placeOf: Int32Array;
  /** The day on which a child who left did so: the day after the last one in the program; NO_DAY for all others. */
  readonly leftOn: Int32Array;
  readonly isFollowed: readonly boolean[];
  readonly edges: readonly number[];

  constructor(
    readonly drafting: Drafting,
    readonly day: Day,
    headings: readonly string[],
    readonly cells: readonly KeyedCell[],
  ) {
    const { cohort } = drafting.context;
    const { following } = cohort;
    this.places = new Places(cohort, headings);
    const lastDay = cohort.ids.map((_, child) => following.lastDayIfLeft(child, -Infinity, day));
    this.leftOn = Int32Array.from(lastDay, (last) => (last === null ? NO_DAY : last + 1));
    this.isFollowed = cohort.ids.map((_, child) => following.enrolmentOn(child, day) !== NOT_FOLLOWED);
    this.placeOf = Int32Array.from(cohort.ids, (_, child) => {
      const last = lastDay[child] ?? null;
      const own = following.enrolmentOn(child, last ?? day);
      const ever = following.latestEnrolmentBegunBy(child, day);
      return own === NOT_FOLLOWED && ever === NOT_FOLLOWED ? -1 : this.places.add(own, ever);
    });
    const spans = cells.flatMap(({ parts }) => parts.ages.replace("at ", "").split(".."));
    this.edges = sorted(spans.filter((edge) => edge !== "").map(Number));
  }

  /** How a child stands, where the days of leaving are cut before each of some days. */
  standOf(child: number, cuts: readonly Day[]): number {
    if (this.isFollowed[child]) return FOLLOWED;
    const left = this.leftOn[child] as Day;
    if (left === NO_DAY) return this.placeOf[child]! < 0 ? NOBODY : GONE;
    const passed = cuts.filter((cut) => cut <= left).length;
    return passed === 0 ? GONE : passed;
  }

  /** On the day, or on the last day in the program. */
  bandOf(child: number, basis: AgeBasis): number {
    const { cohort } = this.drafting.context;
    const on = this.isFollowed[child] ? this.day : (this.leftOn[child] as Day) - 1;
    return bandIndex(ageMonthsOn(cohort.clocks[child] as AgeClock, on, basis), this.edges);
  }

  /** The days at which these populations cut the days of leaving. */
  cutsOf(populations: readonly string[]): number[] {
    const own = this.cells.filter(({ parts }) => populations.includes(parts.population));
    const spans = own.map(({ parts }) => leavingOf(parts, this.day));
    return sorted(spans.flatMap((span) => (span === null ? [] : [span.from, span.to]))).filter(
      (cut) => cut <= this.day,
    );
  }

  /** The bands of a key, from one up to before another; null where it cuts elsewhere. */
  bandsOf(ages: string): readonly [from: number, to: number] | null {
    const [from = "?", to = "?"] = ages.split("..");
    const at = (edge: string, open: number) => (edge === "" ? open : this.edges.indexOf(Number(edge)) + 1 || NaN);
    const span = [at(from, -Infinity), at(to, Infinity)] as const;
    return span.some(Number.isNaN) ? null : span;
  }
}

/** Days of leaving: from one up to before another. */
export interface Leaving {
  readonly from: Day;
  readonly to: Day;
  /** Whether those in the program on the day belong to it. */
  readonly isWithDay: boolean;
}

/** The days of leaving that a key speaks of. */
export function leavingOf({ population, when }: KeyParts, day: Day): Leaving | null {
  const [from = null, to = null] = when.split("..").map(dayFromIso);
  if (from === null || to === null) return null;
  if (population === "left") return { from, to: to + 1, isWithDay: false };
  // who left on the first day of a period was not in the program in it
  return population === "referred" ? { from: from + 1, to: to + 2, isWithDay: to >= day } : null;
}

/** Of those who left up to a day, which stretches a span covers; null where it cuts elsewhere. */
export function stretchesOf({ from, to }: Leaving, cuts: readonly Day[], day: Day): readonly [number, number] | null {
  const [first, next] = [cuts.indexOf(from) + 1, to > day ? Infinity : cuts.indexOf(to) + 1];
  return first === 0 || next === 0 ? null : [first, next];
}

/** The day on which a count stands; NO_DAY where its key says none. */
export function endOf({ when, tag = "" }: KeyParts): Day {
  return dayFromIso(when) ?? dayFromIso(/as of (\S+)/.exec(tag)?.[1] ?? "") ?? NO_DAY;
}

export function sorted(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}
