import { type AgeBasis, type CorrectionRule, SHORTEST_GESTATION_DAYS, TERM_DAYS } from "../../age/correction";
import { isoOf } from "../../age/day";
import { ALL_AGES, type KeyParts } from "../draft/keys";
import { FOLLOWED, GONE, leavingOf, NOBODY, type ProgramDay, stretchesOf } from "./program-day";
import { Combinations, type DeclaredSet, familiesIn, type Universe } from "./universe";

/** One child on a day: where, how it stands, and in which band on either age. */
export interface ChildStanding {
  readonly place: number;
  readonly stands: number;
  /** -1 for those gone before every period that is told. */
  readonly corrected: number;
  readonly chronological: number;
}

/** A count that ties skills to children and to one another, which no table need have. */
export interface Link {
  readonly name: string;
  readonly is: (child: ChildStanding) => boolean;
}

/** The children of a day, told apart by place, by how they stand, and by their bands on either age. */
export class AgesUniverse {
  private readonly cuts: readonly number[];
  private readonly combinations = new Combinations<ChildStanding>(
    ({ place, stands, corrected, chronological }) => `${place},${stands},${corrected},${chronological}`,
  );
  private readonly at: Int32Array;

  constructor(private readonly day: ProgramDay) {
    this.cuts = day.cutsOf(["left", "referred"]);
    const stands = [FOLLOWED, GONE, ...this.cuts.map((_, at) => at + 1)];
    const { correction } = day.drafting.context.settings;
    const pairs = bandPairs(day.edges, correction);
    const { cohort } = day.drafting.context;
    day.places.list.forEach((_, place) =>
      stands.forEach((each) =>
        (each === GONE ? [NO_BANDS] : pairs).forEach((bands) =>
          this.combinations.add({ place, stands: each, ...bands }),
        ),
      ),
    );
    this.at = Int32Array.from(cohort.ids, (_, child) => {
      const own = day.standOf(child, this.cuts);
      if (own === NOBODY) return -1;
      const bands =
        own === GONE
          ? NO_BANDS
          : { corrected: day.bandOf(child, "corrected"), chronological: day.bandOf(child, "chronological") };
      return this.combinations.add({ place: day.placeOf[child] as number, stands: own, ...bands });
    });
  }

  /** @param linkCell - the cell of a link, given its name */
  universe(links: readonly Link[], linkCell: (name: string) => number): Universe {
    const own = this.day.cells.flatMap(({ cell, parts }): DeclaredSet[] => {
      const is = this.setOf(parts);
      return is === null
        ? []
        : [{ cell, name: Object.values(parts).join("|"), kind: kindOf(parts), holds: this.combinations.holds(is) }];
    });
    const linked = links.map(({ name, is }) => ({
      cell: linkCell(name),
      name,
      kind: "link",
      holds: this.combinations.holds(is),
    }));
    const families = familiesIn(this.at, this.day.drafting.families.ofChild);
    return { families, sets: [...own, ...linked], size: this.combinations.list.length };
  }

  /** Stretches of leaving of this universe that lie in one of a coarser cut, which begins and ends at the days given. */
  within(from: number, to: number | undefined): (stands: number) => boolean {
    const [first, next] = [this.cuts.indexOf(from) + 1, to === undefined ? Infinity : this.cuts.indexOf(to) + 1];
    return (stands) => stands >= first && stands < next;
  }

  before(first: number | undefined): (stands: number) => boolean {
    const next = first === undefined ? Infinity : this.cuts.indexOf(first) + 1;
    return (stands) => stands === GONE || (stands > 0 && stands < next);
  }

  private setOf(parts: KeyParts): ((child: ChildStanding) => boolean) | null {
    const { population, when, group, subject, ages, column } = parts;
    const bands = this.day.bandsOf(ages);
    if (column !== "children" || bands === null || !hasTag(parts, this.day)) return null;
    if (subject !== "" && !isBasis(subject)) return null;
    if ((ages === ALL_AGES) !== (subject === "")) return null;
    const stands = this.standsOf(parts);
    if (stands === null) return null;
    const isPlace = this.day.places.within(group, population === "ever followed" ? "ever" : "own");
    if (population === "ever followed") return when === isoOf(this.day.day) ? (each) => isPlace[each.place]! : null;
    const basis = isBasis(subject) ? subject : "chronological";
    return (each) =>
      stands(each.stands) &&
      isPlace[each.place]! &&
      (ages === ALL_AGES || (each[basis] >= bands[0] && each[basis] < bands[1]));
  }

  private standsOf(parts: KeyParts): ((stands: number) => boolean) | null {
    const { population, when, group, ages } = parts;
    if (population === "ever followed") return () => true;
    if (population === "followed") return when === isoOf(this.day.day) ? (stands) => stands === FOLLOWED : null;
    // of a site, or of a band, also who was there on another day of the period only
    if (population === "referred" && (group !== "" || ages !== ALL_AGES)) return null;
    const span = leavingOf(parts, this.day.day);
    const stretches = span === null ? null : stretchesOf(span, this.cuts, this.day.day);
    if (span === null || stretches === null) return null;
    return (stands) => (stands === FOLLOWED ? span.isWithDay : stands >= stretches[0] && stands < stretches[1]);
  }
}

const NO_BANDS = { corrected: -1, chronological: -1 };

export function kindOf({ population, when }: KeyParts): string {
  return `${population} ${when}`;
}

export function isBasis(subject: string): subject is AgeBasis {
  return subject === "corrected" || subject === "chronological";
}

/** Settings that are not those of this release count something else. */
export function hasTag(
  { population, subject, ages, column, tag = "" }: KeyParts,
  { drafting, day }: ProgramDay,
): boolean {
  const { tags } = drafting;
  const isChildren = column === "children" && !subject.startsWith("skill ");
  const own = ages === ALL_AGES ? (isChildren ? "" : tags.looks) : isChildren ? tags.ages : tags.both;
  const isOfPeriod = population === "left" || population === "referred";
  return tag === [own, isOfPeriod ? `as of ${isoOf(day)}` : ""].filter(Boolean).join(" ");
}

/**
 * The bands that one child can be in on either age: a corrected age is never above the chronological one, never more than
 * the weeks missing at the shortest gestation below it, and the same from where correcting stops (METHOD.md, section 3).
 */
function bandPairs(
  edges: readonly number[],
  rule: CorrectionRule,
): Pick<ChildStanding, "corrected" | "chronological">[] {
  const bands = Array.from({ length: edges.length + 1 }, (_, band) => band);
  const low = (band: number) => edges[band - 1] ?? -Infinity;
  const high = (band: number) => edges[band] ?? Infinity;
  const canBe = (corrected: number, chronological: number) => {
    // nobody is in the program before birth
    if (high(chronological) <= 0) return false;
    if (corrected === chronological) return true;
    if (corrected > chronological || rule.belowDays === 0) return false;
    const isCorrecting = low(rule.untilAge === "corrected" ? corrected : chronological) < rule.untilMonths;
    return isCorrecting && low(chronological) - high(corrected) < MOST_MONTHS;
  };
  return bands.flatMap((chronological) =>
    bands.filter((corrected) => canBe(corrected, chronological)).map((corrected) => ({ corrected, chronological })),
  );
}

/** Between an age and the corrected one; a month has 28 days or more. */
const MOST_MONTHS = (TERM_DAYS - SHORTEST_GESTATION_DAYS) / 28;
