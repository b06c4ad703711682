import { bandIndex } from "../../age/bands";
import { type AgeBasis, ageMonthsOn } from "../../age/correction";
import { boxOn } from "../../cohort/boxes";
import { keyOf } from "../../records/cells/words";
import type { Children, Skill } from "../../records/records";
import { groupOfFollowed, type TableContext } from "../context";
import type { CellNames } from "./cell-names";
import { COUNTS, type Measure } from "./parts";

/** One reading of the records at one day, under one set of settings. */
export interface Side {
  readonly context: TableContext;
  readonly children: Children;
}

/** The child or the skill is not there, or the child is not in the program that day. */
export const NOWHERE = -1;

/** Where each child stands with each skill on one day: in which cell of met-by-band, and in which box. */
export class Standing {
  /** By ids as they are compared. */
  readonly childAt: ReadonlyMap<string, number>;
  readonly skillAt: ReadonlyMap<string, number>;
  private readonly groupNumbers: Int32Array;
  private readonly skillNames: Int32Array;
  /** The band of each child by corrected, then by chronological age. */
  private readonly bandOf: Int32Array;

  /** @param areaOf - the area under which a skill counts; null leaves it out */
  constructor(
    readonly side: Side,
    private readonly names: CellNames,
    areaOf: (skill: Skill) => string | null = ({ area }) => area,
  ) {
    const { cohort } = side.context;
    const areas = cohort.skills.map(areaOf);
    this.childAt = new Map(cohort.ids.map((id, child) => [keyOf(id), child]));
    this.skillAt = new Map(
      cohort.skills.flatMap(({ id }, skill) => (areas[skill] === null ? [] : [[keyOf(id), skill] as const])),
    );
    this.skillNames = Int32Array.from(cohort.skills, ({ id }, skill) => {
      const area = areas[skill] ?? null;
      return area === null ? NOWHERE : names.skill(id, area);
    });
    this.groupNumbers = this.groups();
    this.bandOf = this.bands();
  }

  get skills(): readonly Skill[] {
    return this.side.context.cohort.skills;
  }

  /** NOWHERE for a child that is not in the program that day. */
  groupOf(child: number): number {
    return child === NOWHERE ? NOWHERE : (this.groupNumbers[child] as number);
  }

  /** NOWHERE for a child that is not in the program that day. */
  cellOf(child: number, skill: number): number {
    const group = this.groupOf(child);
    if (group === NOWHERE || skill === NOWHERE) return NOWHERE;
    const byChronological = this.skills[skill]?.ageBasis === "chronological" ? 1 : 0;
    const band = this.bandOf[2 * child + byChronological] as number;
    return this.names.cell(group, this.skillNames[skill] as number, band);
  }

  /** The box by the checks up to that day, also of a child that is not in the program. */
  boxOf(child: number, skill: number): number {
    if (child === NOWHERE || skill === NOWHERE) return NOWHERE;
    const { cohort, attainment, asOf, settings } = this.side.context;
    return boxOn(cohort, attainment, child, skill, asOf, settings.recheckDays);
  }

  /** Whether the child counts in its cell, as 0 or 1. */
  count(child: number, skill: number, measure: Measure): number {
    const isThere = this.cellOf(child, skill) !== NOWHERE;
    return isThere && COUNTS[measure][this.boxOf(child, skill)] ? 1 : 0;
  }

  /** The place of a skill of another standing among the skills of this one. */
  indexOf(skill: Skill | undefined): number {
    return this.skillAt.get(keyOf(skill?.id ?? "")) ?? NOWHERE;
  }

  /** The skills that replace one, directly or through others. */
  skillsAfter(skill: number): number[] {
    const after = new Set<number>();
    for (let size = -1; size < after.size;) {
      size = after.size;
      this.skills.forEach(({ follows }, each) => {
        if (follows !== null && (follows === skill || after.has(follows))) after.add(each);
      });
    }
    return [...after];
  }

  /** The number of each child's group; nobody is in the program before birth. */
  private groups(): Int32Array {
    const { cohort, groups, asOf } = this.side.context;
    const headings = groups.columns.map(({ key }) => key);
    const numbers = groups.values.map((values) => this.names.group(headings, values));
    return groupOfFollowed(this.side.context).map((group, child) =>
      group < 0 || (cohort.clocks[child]?.birth ?? Infinity) > asOf ? NOWHERE : (numbers[group] as number),
    );
  }

  private bands(): Int32Array {
    const { cohort, asOf, settings } = this.side.context;
    const named = [...settings.edges, Infinity].map((_, index) => this.names.bandAt(index, settings.edges));
    const bands = new Int32Array(2 * cohort.clocks.length).fill(NOWHERE);
    cohort.clocks.forEach((clock, child) => {
      if (clock.birth > asOf) return;
      const bandBy = (basis: AgeBasis) => named[bandIndex(ageMonthsOn(clock, asOf, basis), settings.edges)] as number;
      bands[2 * child] = bandBy("corrected");
      bands[2 * child + 1] = bandBy("chronological");
    });
    return bands;
  }
}
