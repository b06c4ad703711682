import type { Day } from "../../age/day";
import { attain } from "../../cohort/attainment";
import type { Attainment } from "../../cohort/state";
import { NO_DAY } from "../../records/records";
import { type AgesUniverse, hasTag, isBasis, kindOf, type Link } from "./ages-universe";
import type { KeyParts } from "../draft/keys";
import { FOLLOWED, GONE, type KeyedCell, leavingOf, NOBODY, type ProgramDay, stretchesOf } from "./program-day";
import { type SkillSet, skillSetOf } from "./skill-sets";
import { nameOfStanding, type SkillStanding, StandingReader, standingsOf } from "./skill-standing";
import { Combinations, type DeclaredSet, familiesIn, type Holds, type Universe } from "./universe";

/** A child as one skill tells it apart. */
interface Placed extends SkillStanding {
  readonly place: number;
}

/** Of each skill, the children of a day told apart by box and by what is known; the links tie each skill to the children. */
export class SkillUniverses {
  private readonly leaving: readonly Day[];
  private readonly combinations = new Combinations<Placed>((each) => `${each.place}/${nameOfStanding(each)}`);
  private readonly holdsOf = new Map<string, Holds>();
  private readonly at: readonly Int32Array[];
  private readonly bySubject = new Map<string, KeyedCell[]>();

  constructor(
    private readonly day: ProgramDay,
    private readonly ages: AgesUniverse,
  ) {
    this.leaving = day.cutsOf(["left"]);
    const stands = [FOLLOWED, ...this.leaving.map((_, at) => at + 1)];
    const hasExact = day.drafting.context.attainment.exact.includes(1);
    const foreseen = standingsOf(stands, day.edges.length, hasExact);
    day.places.list.forEach((_, place) => foreseen.forEach((each) => this.combinations.add({ place, ...each })));
    this.at = this.childrenOf();
    for (const keyed of day.cells) {
      const { subject } = keyed.parts;
      this.bySubject.set(subject, [...(this.bySubject.get(subject) ?? []), keyed]);
    }
  }

  /** One a skill that some count is of. @param linkCell - the cell of a link, made once */
  all(linkCell: (name: string) => number): Universe[] {
    const { skills, context, families } = this.day.drafting;
    return skills.flatMap((subject, skill) => {
      const own = (this.bySubject.get(subject) ?? []).flatMap((keyed) => this.declared(keyed));
      if (own.length === 0) return [];
      const { ageBasis } = context.cohort.skills[skill]!;
      const links = this.linksOf(ageBasis).map(({ name, placed }): DeclaredSet => ({
        cell: linkCell(name),
        name,
        kind: "link",
        holds: this.holds(name, placed),
      }));
      const inFamilies = familiesIn(this.at[skill] as Int32Array, families.ofChild);
      return [{ families: inFamilies, sets: [...own, ...links], size: this.combinations.list.length }];
    });
  }

  /** Children by place, by how they stand and by band: the margins that all skills of one age share. */
  linksOf(basis: "corrected" | "chronological"): (Link & { readonly placed: (each: Placed) => boolean })[] {
    const bands = Array.from({ length: this.day.edges.length + 1 }, (_, band) => band);
    const { day, ages, leaving } = this;
    return day.places.list.flatMap((_, place) => {
      const gone = ages.before(leaving[0]);
      const isGone = {
        name: `link ${place} gone`,
        is: (child: { place: number; stands: number }) => child.place === place && gone(child.stands),
        placed: (each: Placed) => each.place === place && each.stands === GONE,
      };
      const inBands = [FOLLOWED, ...leaving.map((__, at) => at + 1)].flatMap((stands) => {
        const isSo =
          stands === FOLLOWED
            ? (own: number) => own === FOLLOWED
            : ages.within(leaving[stands - 1] as Day, leaving[stands]);
        return bands.map((band) => ({
          name: `link ${place} ${stands} ${basis} ${band}`,
          is: (child: { place: number; stands: number; corrected: number; chronological: number }) =>
            child.place === place && isSo(child.stands) && child[basis] === band,
          placed: (each: Placed) => each.place === place && each.stands === stands && each.band === band,
        }));
      });
      return [isGone, ...inBands];
    });
  }

  private declared({ cell, parts }: KeyedCell): DeclaredSet[] {
    if (isBasis(parts.subject)) return [];
    const set = this.setOf(parts);
    if (set === null) return [];
    const isPlace = this.day.places.within(parts.group, parts.population === "ever followed" ? "ever" : "own");
    const name = `${parts.group} ${set.name}`;
    return [
      { cell, name, kind: kindOf(parts), holds: this.holds(name, (each) => isPlace[each.place]! && set.is(each)) },
    ];
  }

  private setOf(parts: KeyParts): SkillSet | null {
    const cuts = { day: this.day.day, edges: this.day.edges };
    if (parts.population === "ever followed") return skillSetOf(parts, cuts, () => true, this.day.drafting.tags);
    if (!hasTag(parts, this.day)) return null;
    const stands = this.standsOf(parts);
    return stands === null ? null : skillSetOf(parts, cuts, stands, this.day.drafting.tags);
  }

  private standsOf(parts: KeyParts): ((stands: number) => boolean) | null {
    if (parts.population === "followed") return (stands) => stands === FOLLOWED;
    const span = parts.population === "left" ? leavingSpan(parts, this.day, this.leaving) : null;
    return span === null ? null : (stands) => stands >= span[0] && stands < span[1];
  }

  private holds(name: string, is: (each: Placed) => boolean): Holds {
    const known = this.holdsOf.get(name) ?? this.combinations.holds(is);
    this.holdsOf.set(name, known);
    return known;
  }

  /** Of each skill and child the combination; -1: nobody who counts. */
  private childrenOf(): Int32Array[] {
    const { day, leaving } = this;
    const { context } = day.drafting;
    const { cohort } = context;
    const stands = cohort.ids.map((_, child) => day.standOf(child, leaving));
    const lastDays = Int32Array.from(stands, (own, child) => (own > 0 ? (day.leftOn[child] as Day) - 1 : NO_DAY));
    const now = attainedBy(day);
    const left = leaving.length === 0 ? null : attain(cohort, lastDays);
    const reader = new StandingReader(context, day.edges, now);
    return cohort.skills.map((_, skill) =>
      Int32Array.from(stands, (own, child) => {
        if (own === NOBODY) return -1;
        const onDay =
          own === GONE
            ? null
            : own === FOLLOWED
              ? { day: day.day, attainment: now }
              : { day: lastDays[child] as Day, attainment: left as Attainment };
        return this.combinations.add({ place: day.placeOf[child] as number, ...reader.of(child, skill, own, onDay) });
      }),
    );
  }
}

function leavingSpan(parts: KeyParts, { day }: ProgramDay, cuts: readonly Day[]): readonly [number, number] | null {
  const span = leavingOf(parts, day);
  return span === null ? null : stretchesOf(span, cuts, day);
}

function attainedBy({ drafting: { context }, day }: ProgramDay): Attainment {
  return day === context.asOf ? context.attainment : attain(context.cohort, day);
}
