import { bandLabel } from "../../age/bands";
import { headingKey, keyOf } from "../../records/cells/words";
import type { TableColumn } from "../table";
import type { CellName } from "./changed-cell";

/** Stands in place of a skill where the skills of an area are added up. */
const ALL_SKILLS = "all";
const MOST_SKILLS = 2 ** 16;
const MOST_BANDS = 2 ** 12;

/**
 * Numbers for the cells of several tables, so that the same cell has the same number in each: groups, skills and areas are
 * compared as ids are, and spelled as the table that was named first spells them.
 */
export class CellNames {
  private readonly groups = new Named<readonly (string | null)[]>();
  private readonly skills = new Named<{ readonly skill: string; readonly area: string }>();
  private readonly bands = new Named<{ readonly label: string; readonly from: number; readonly to: number }>();

  private readonly areas = new Map<string, number>();

  /**
   * @param columns - every column that either side groups by
   * @param isWhole - all groups and ages are one
   */
  constructor(
    readonly columns: readonly TableColumn[],
    private readonly isWhole = false,
  ) {}

  group(headings: readonly string[], values: readonly string[]): number {
    if (this.isWhole) return this.groups.numberOf("", []);
    const group = this.columns.map(({ key }) => {
      const at = headings.findIndex((heading) => keyOf(heading) === keyOf(key));
      return at < 0 ? null : (values[at] as string);
    });
    return this.groups.numberOf(JSON.stringify(group.map((value) => value && keyOf(value))), group);
  }

  skill(skill: string, area: string): number {
    return this.skills.numberOf(JSON.stringify([keyOf(skill), headingKey(area)]), { skill, area });
  }

  /** The row over the skills of an area that a cell is part of. Areas come in the order of their skills. */
  overSkills(cell: number): number {
    if (this.areas.size === 0) this.nameAreas();
    const { group, skill, band } = partsOf(cell);
    return this.cell(group, this.areas.get(headingKey(this.skills.at(skill).area)) as number, band);
  }

  private nameAreas(): void {
    for (const { area } of this.skills.all()) {
      const key = headingKey(area);
      const row = this.skills.numberOf(`${ALL_SKILLS} of ${key}`, { skill: ALL_SKILLS, area });
      if (!this.areas.has(key)) this.areas.set(key, row);
    }
  }

  bandAt(index: number, edges: readonly number[]): number {
    const [from, to] = [edges[index - 1] ?? -Infinity, edges[index] ?? Infinity];
    return this.band(bandLabel(index, edges), from, to);
  }

  band(label: string, from: number, to: number): number {
    if (this.isWhole) return this.bands.numberOf("", { label: "", from: -Infinity, to: Infinity });
    return this.bands.numberOf(label, { label, from, to });
  }

  cell(group: number, skill: number, band: number): number {
    return (group * MOST_SKILLS + skill) * MOST_BANDS + band;
  }

  nameOf(cell: number): CellName {
    const { group, skill, band } = partsOf(cell);
    return { group: this.groups.at(group), ...this.skills.at(skill), band: this.bands.at(band).label };
  }

  /** In the order of met-by-band: by group, then skill, then age. */
  sorted(cells: readonly number[]): number[] {
    const placeOfGroup = this.groups.places((a, b) => compareLists(a, b));
    const placeOfBand = this.bands.places((a, b) => a.from - b.from || a.to - b.to);
    const placed = cells.map((cell) => {
      const { group, skill, band } = partsOf(cell);
      return { cell, at: this.cell(placeOfGroup[group] as number, skill, placeOfBand[band] as number) };
    });
    return placed.sort((a, b) => a.at - b.at).map(({ cell }) => cell);
  }
}

function partsOf(cell: number): { group: number; skill: number; band: number } {
  const rest = Math.floor(cell / MOST_BANDS);
  return { group: Math.floor(rest / MOST_SKILLS), skill: rest % MOST_SKILLS, band: cell % MOST_BANDS };
}

function compareLists(a: readonly (string | null)[], b: readonly (string | null)[]): number {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at < 0 ? 0 : (a[at] ?? "") < (b[at] ?? "") ? -1 : 1;
}

/** Things in the order in which they were first named. */
class Named<Thing> {
  private readonly numbers = new Map<string, number>();
  private readonly things: Thing[] = [];

  numberOf(key: string, thing: Thing): number {
    const known = this.numbers.get(key);
    if (known !== undefined) return known;
    this.numbers.set(key, this.things.length);
    return this.things.push(thing) - 1;
  }

  all(): readonly Thing[] {
    return [...this.things];
  }

  at(number: number): Thing {
    return this.things[number] as Thing;
  }

  /** The place of each in another order. */
  places(compare: (a: Thing, b: Thing) => number): number[] {
    const order = this.things.map((_, at) => at).sort((a, b) => compare(this.at(a), this.at(b)));
    const places = new Array<number>(order.length);
    order.forEach((number, place) => (places[number] = place));
    return places;
  }
}
