import type { Drafting } from "../draft/drafting";
import { partsOfKey } from "../draft/keys";
import { isSecret, type Cell, type CountSystem, type Equation, smallSpan } from "../system";
import { AgesUniverse } from "./ages-universe";
import { childrenUniverse } from "./children-universe";
import { headingsOf } from "./places";
import { endOf, type KeyedCell, ProgramDay, sorted } from "./program-day";
import { SkillUniverses } from "./skill-universes";
import { Structures } from "./structures";
import { NO_DAY } from "../../records/records";
import { isEmpty, peopleOf, type Universe } from "./universe";

/** Counts of children in these populations are sets of children; the others are tied by the tables that they stand in. */
const POPULATIONS = ["followed", "left", "ever followed", "referred", "left after six months"];

/** A system with all that its counts say of one another. */
export interface WithSets {
  readonly system: CountSystem;
  /** False where the counts of skills are tied a few at a time only. */
  readonly isFull: boolean;
}

/**
 * The system with all that its counts say of one another, whichever tables and releases they stand in: each count is the
 * sum of those that it is made of. What is small between two counts that are shown is a count of its own.
 *
 * Of a program with many skills the counts of a skill are tied by twos and threes instead: a count, others that are parts of
 * it and have nobody in common, and what is left over. The children stay told apart in full.
 *
 * @param own - cells of this release; what no cell of it hangs on is left alone
 */
export function withSets(system: CountSystem, drafting: Drafting, own: number): WithSets {
  return new Builder(system, drafting, own).build();
}

/** Unknowns of all skills together up to which each count is a sum of them: the attack on more takes minutes. */
const MOST_PARTS = 6000;

class Builder {
  private readonly cells: Cell[];
  private readonly equations: Equation[];
  private readonly structures: Structures;
  private readonly links = new Map<string, number>();
  private isFull = true;

  constructor(
    system: CountSystem,
    private readonly drafting: Drafting,
    private readonly own: number,
  ) {
    this.cells = [...system.cells];
    this.equations = [...system.equations];
    this.structures = new Structures(system);
  }

  build(): WithSets {
    const keyed = this.cells.flatMap(({ key }, cell): KeyedCell[] => {
      const parts = partsOfKey(key);
      return POPULATIONS.includes(parts.population) ? [{ cell, parts }] : [];
    });
    for (const headings of wholeHeadings(keyed)) {
      const mine = keyed.filter(({ parts }) => headingsOf(parts.group).every((heading) => headings.includes(heading)));
      for (const day of sorted(mine.map(({ parts }) => endOf(parts)))) {
        const cells = mine.filter(({ parts }) => endOf(parts) === day);
        if (day !== NO_DAY && cells.some(({ cell }) => cell < this.own))
          this.addDay(new ProgramDay(this.drafting, day, headings, cells));
      }
    }
    for (const group of new Set(keyed.map(({ parts }) => parts.group))) {
      const mine = keyed.filter(({ parts }) => parts.group === group);
      const universe = childrenUniverse(this.drafting, group, mine);
      if (universe !== null) this.add(universe);
    }
    return { system: { cells: this.cells, equations: this.equations }, isFull: this.isFull };
  }

  private addDay(day: ProgramDay): void {
    if (!day.places.isKnown) return;
    const name = `${day.day}`;
    const ages = new AgesUniverse(day);
    const skills = new SkillUniverses(day, ages);
    const { cohort } = this.drafting.context;
    const bases = [...new Set(cohort.skills.map(({ ageBasis }) => ageBasis))];
    const links = new Map(bases.flatMap((basis) => skills.linksOf(basis)).map((link) => [link.name, link]));
    this.links.clear();
    const linkCell = (link: string) => this.link(`${name} ${link}`);
    this.add(ages.universe([...links.values()], linkCell));
    const all = skills.all(linkCell);
    const parts = all.reduce((sum, universe) => sum + this.structures.of(universe).parts.size, 0);
    const isFull = parts <= MOST_PARTS;
    this.isFull &&= isFull;
    for (const universe of all) {
      if (isFull) this.add(universe);
      else this.relate(universe);
    }
  }

  private link(name: string): number {
    const known = this.links.get(name);
    if (known !== undefined) return known;
    const cell = this.put(null, name);
    this.links.set(name, cell);
    return cell;
  }

  private put(count: number | null, key: string): number {
    return (
      this.cells.push({
        key: `set|${this.cells.length}|${key}`,
        place: "",
        count,
        showing: "never",
        secret: null,
        loss: 1,
      }) - 1
    );
  }

  private add(universe: Universe): void {
    const sets = this.sameRecords(universe);
    sets.forEach(({ cell, kind, holds }) => {
      if (kind === "link") this.cells[cell] = { ...this.cells[cell]!, count: peopleOf(universe.families, holds).count };
    });
    const { parts, base } = this.structures.of({ ...universe, sets });
    const counts = parts.countsOf(universe.families);
    const atoms = Array.from(counts, (count) => this.put(count, "part"));
    base.forEach(({ at, own }) =>
      this.equate(
        sets[at]!.cell,
        own.map((part) => atoms[part] as number),
      ),
    );
    this.addBetween({ ...universe, sets }, "rests");
  }

  /** A count, parts of it and what is left over, instead of one sum of the same unknowns for all. */
  private relate(universe: Universe): void {
    this.addBetween({ ...universe, sets: this.sameRecords(universe) }, "relations");
  }

  private equate(whole: number, parts: readonly number[]): void {
    this.equations.push({
      terms: [{ cell: whole, coefficient: 1 }, ...parts.map((cell) => ({ cell, coefficient: -1 }))],
      equals: 0,
    });
  }

  private addBetween(universe: Universe, what: "rests" | "relations"): void {
    const { minimumCell } = this.drafting.context.settings;
    const mayBeShown = (at: number) => {
      const cell = this.cells[universe.sets[at]!.cell] as Cell;
      return cell.showing !== "never" && !isSecret(cell) && cell.count !== 0;
    };
    for (const { whole, parts, holds, isRelation } of this.structures.between(universe, what)) {
      const people = peopleOf(universe.families, holds);
      const isNamed = mayBeShown(whole) && (parts.length > 1 || mayBeShown(parts[0]!));
      const secret = isNamed ? smallSpan(people.count, people.contributors, minimumCell) : null;
      if (secret === null && !(what === "relations" && isRelation)) continue;
      const [one, others] = [universe.sets[whole]!.cell, parts.map((at) => universe.sets[at]!.cell)];
      this.equate(one, isEmpty(holds) ? others : [...others, this.rest(one, others, people.count, secret)]);
    }
  }

  private rest(whole: number, parts: readonly number[], count: number, secret: Cell["secret"]): number {
    const cell = this.put(count, "rest");
    const more = parts.length === 1 ? "" : ` and ${parts.length - 1} more`;
    const place = `${this.cells[whole]!.place}, less ${this.cells[parts[0]!]!.place}${more}`;
    this.cells[cell] = { ...this.cells[cell]!, place, secret };
    return cell;
  }

  /** Counts that the records no longer give are of other records, and so is what was hidden beside them: nothing is said of them. */
  private sameRecords({ families, sets }: Universe): Universe["sets"] {
    const isOther = ({ cell, holds, kind }: Universe["sets"][number]) => {
      const { count } = this.cells[cell]!;
      return kind !== "link" && count !== null && count !== peopleOf(families, holds).count;
    };
    const others = new Set(sets.filter(isOther));
    if (others.size === 0) return sets;
    return sets.filter((set) => !others.has(set) && (set.kind === "link" || this.cells[set.cell]!.count !== null));
  }
}

/** The ways to group of which no other has all columns. */
function wholeHeadings(keyed: readonly KeyedCell[]): string[][] {
  const all = [...new Set(keyed.map(({ parts }) => JSON.stringify(headingsOf(parts.group))))].map(
    (text) => JSON.parse(text) as string[],
  );
  return all.filter(
    (own) => !all.some((other) => other.length > own.length && own.every((heading) => other.includes(heading))),
  );
}
