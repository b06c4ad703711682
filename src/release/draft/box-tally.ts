import { bandIndex } from "../../age/bands";
import { type AgeClock, ageMonthsOn } from "../../age/correction";
import { boxOn } from "../../cohort/boxes";
import type { Attainment } from "../../cohort/state";
import { BOX_COLUMNS, COLUMNS_OF_BOX } from "./box-columns";
import type { Drafting } from "./drafting";
import { Tally } from "./tally";

/** Children as they stand on a day of their own each. */
export interface Standing {
  /** -1: not counted. */
  readonly groupOf: Int32Array;
  readonly dayOf: Int32Array;
  /** Read up to those days. */
  readonly attainment: Attainment;
}

/** The rows of a table by age band in every scope: skills first, then areas; the last slot is all ages together. */
export class BoxTally {
  readonly rowCount: number;
  readonly slotCount: number;
  /** Area names, in the order of the rows. */
  readonly areas: readonly string[];
  private readonly areaOf: readonly number[];
  private readonly tally: Tally;

  constructor(
    private readonly drafting: Drafting,
    private readonly standing: Standing,
  ) {
    const { skills } = drafting.context.cohort;
    this.areas = [...new Set(skills.map(({ area }) => area))];
    this.areaOf = skills.map(({ area }) => skills.length + this.areas.indexOf(area));
    this.rowCount = skills.length + this.areas.length;
    this.slotCount = drafting.context.settings.edges.length + 2;
    this.tally = new Tally(drafting.scopes.list.length * this.rowCount * this.slotCount * BOX_COLUMNS.length);
    for (const child of drafting.families.inOrder) if (standing.groupOf[child]! >= 0) this.addChild(child);
  }

  /** The slot of all ages together. */
  get allAges(): number {
    return this.slotCount - 1;
  }

  /** Skills of the area in a row. */
  skillsOf(area: number): number[] {
    return this.areaOf.flatMap((row, skill) => (row === area ? [skill] : []));
  }

  indexOf(scope: number, row: number, slot: number, column: number): number {
    return ((scope * this.rowCount + row) * this.slotCount + slot) * BOX_COLUMNS.length + column;
  }

  of(index: number): ReturnType<Tally["of"]> {
    return this.tally.of(index);
  }

  get size(): number {
    return this.tally.counts.length;
  }

  private addChild(child: number): void {
    const { context, families, scopes } = this.drafting;
    const { cohort, settings } = context;
    const day = this.standing.dayOf[child] as number;
    const family = families.ofChild[child] as number;
    const slots = this.slotsOn(child, day);
    const inScopes = scopes.ofGroup[this.standing.groupOf[child] as number] as readonly number[];
    cohort.skills.forEach(({ ageBasis }, skill) => {
      const box = boxOn(cohort, this.standing.attainment, child, skill, day, settings.recheckDays);
      const columns = COLUMNS_OF_BOX[box] as readonly number[];
      for (const scope of inScopes) {
        for (const row of [skill, this.areaOf[skill] as number]) {
          for (const slot of slots[ageBasis]) {
            for (const column of columns) this.tally.add(this.indexOf(scope, row, slot, column), family);
          }
        }
      }
    });
  }

  private slotsOn(child: number, day: number) {
    const { cohort, settings } = this.drafting.context;
    const clock = cohort.clocks[child] as AgeClock;
    const slot = (basis: "corrected" | "chronological") => bandIndex(ageMonthsOn(clock, day, basis), settings.edges);
    return {
      corrected: [slot("corrected"), this.allAges],
      chronological: [slot("chronological"), this.allAges],
    };
  }
}
