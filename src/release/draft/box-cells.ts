import { bandLabel } from "../../age/bands";
import { AT, BOX_COLUMNS, ROW_SUMS } from "./box-columns";
import { BoxTally, type Standing } from "./box-tally";
import type { Drafting } from "./drafting";
import { ALL_AGES, bandSpan, keyOf } from "./keys";
import type { Scope } from "./scopes";

/** Who is counted, as keys and places name them. */
export interface BoxPopulation {
  readonly population: string;
  readonly when: string;
  /** The day on which a period ends that its counts are of. */
  readonly tag?: string;
  readonly table: string;
}

const ALL_COLUMNS = [...BOX_COLUMNS.keys()];

/** The cells of one population in its boxes, and the equations between them. */
export class BoxCells {
  readonly tally: BoxTally;
  private readonly cellOf: Int32Array;
  private readonly added = new Set<string>();

  constructor(
    private readonly drafting: Drafting,
    private readonly population: BoxPopulation,
    standing: Standing,
  ) {
    this.tally = new BoxTally(drafting, standing);
    this.cellOf = new Int32Array(this.tally.size).fill(-1);
  }

  /** True where somebody stands there; what holds nobody has no row and no cell. */
  isHeld(scope: number, row: number, slot: number): boolean {
    return this.tally.of(this.tally.indexOf(scope, row, slot, AT.children)).count > 0;
  }

  /** The cell of a count: part of a total that nobody prints, of a printed row, or printed itself. */
  cell(scope: number, row: number, slot: number, column: number, use: "total" | "row" | "printed" = "total"): number {
    const at = this.tally.indexOf(scope, row, slot, column);
    const known = this.cellOf[at] as number;
    if (known >= 0 && use === "total") return known;
    const { key, words, loss } = BOX_COLUMNS[column]!;
    const isArea = this.isArea(row);
    const { tag, ...subject } = this.subjectOf(row, slot, column);
    const index = this.drafting.builder.cell({
      key: keyOf({
        ...this.population,
        ...subject,
        tag: [tag, this.population.tag].filter(Boolean).join(" "),
        group: this.scope(scope).key,
        column: key,
      }),
      place: `${this.rowPlace(scope, row, slot)}, ${words}`,
      ...this.tally.of(at),
      showing: use === "printed" ? "table" : "never",
      loss: isArea ? loss.area : loss.skill,
      zeroIsSecret: use !== "total" && this.hidesWhole(scope, row, slot, column),
    });
    this.cellOf[at] = index;
    return index;
  }

  /** Cells and sums of a printed row. */
  addRow(scope: number, row: number, slot: number): void {
    BOX_COLUMNS.forEach(({ printed }, column) => this.cell(scope, row, slot, column, printed ? "printed" : "row"));
    for (const [whole, parts] of ROW_SUMS) this.addSum(scope, row, slot, whole, parts);
  }

  addSum(scope: number, row: number, slot: number, whole: number, parts: readonly number[]): void {
    this.adds(
      this.cell(scope, row, slot, whole),
      parts.map((column) => this.cell(scope, row, slot, column)),
    );
  }

  /** An area counts the boxes of its skills; what else its row has follows from them. */
  addAreaSums(scope: number, area: number, slot: number): void {
    const skills = this.tally.skillsOf(area).filter((skill) => this.isHeld(scope, skill, slot));
    BOX_COLUMNS.forEach(({ boxes }, column) => {
      if (boxes.length > 1) return;
      const parts = skills.map((skill) => this.cell(scope, skill, slot, column));
      this.adds(this.cell(scope, area, slot, column), parts);
    });
  }

  /** Columns of a scope that no table prints, as the sum of its parts. */
  addScopeTotals(scope: number, row: number, slot: number, columns: readonly number[] = ALL_COLUMNS): void {
    const parts = this.scope(scope).parts.filter((part) => this.isHeld(part, row, slot));
    columns.forEach((column) =>
      this.adds(
        this.cell(scope, row, slot, column),
        parts.map((part) => this.cell(part, row, slot, column)),
      ),
    );
  }

  /** Every column over all ages, as the sum of the bands. */
  addAgeTotals(scope: number, row: number): void {
    const bands = Array.from({ length: this.tally.allAges }, (_, band) => band);
    const held = bands.filter((band) => this.isHeld(scope, row, band));
    BOX_COLUMNS.forEach((_, column) =>
      this.adds(
        this.cell(scope, row, this.tally.allAges, column),
        held.map((band) => this.cell(scope, row, band, column)),
      ),
    );
  }

  isArea(row: number): boolean {
    return row >= this.drafting.context.cohort.skills.length;
  }

  /** `met-by-band: North, sits, 6 to <9 months`. */
  rowPlace(scope: number, row: number, slot: number): string {
    return `${this.population.table}: ${this.rowWords(scope, row, slot)}`;
  }

  private rowWords(scope: number, row: number, slot: number): string {
    const { cohort, settings } = this.drafting.context;
    const subject = this.isArea(row) ? `all of ${this.areaAt(row)}` : (cohort.skills[row]?.id ?? "");
    const ages = slot === this.tally.allAges ? "all ages" : bandLabel(slot, settings.edges);
    return [this.scope(scope).words, subject, ages].filter((each) => each !== "").join(", ");
  }

  private adds(whole: number, parts: readonly number[]): void {
    const name = `${whole}=${parts.join("+")}`;
    if (this.added.has(name)) return;
    this.added.add(name);
    this.drafting.builder.adds(whole, parts);
  }

  private hidesWhole(scope: number, row: number, slot: number, column: number): boolean {
    if (this.drafting.context.settings.wholeGroups !== "hide") return false;
    const { count } = this.tally.of(this.tally.indexOf(scope, row, slot, AT.assessed));
    return count > 0 && (column === AT.met || column === AT.without);
  }

  private scope(scope: number): Scope {
    return this.drafting.scopes.list[scope] as Scope;
  }

  private areaAt(row: number): string {
    return this.tally.areas[row - this.drafting.context.cohort.skills.length] as string;
  }

  /** Children are the same for all skills of an age basis, and over all ages for all skills. */
  private subjectOf(row: number, slot: number, column: number) {
    const { context, skills, tags } = this.drafting;
    const { cohort, settings } = context;
    const isAll = slot === this.tally.allAges;
    const ages = isAll ? ALL_AGES : bandSpan(slot, settings.edges);
    const [ageTag, bothTags] = isAll ? ["", tags.looks] : [tags.ages, tags.both];
    if (this.isArea(row)) return { subject: `area ${this.areaAt(row)}`, ages, tag: bothTags };
    if (column !== AT.children) return { subject: skills[row] as string, ages, tag: bothTags };
    return { subject: isAll ? "" : (cohort.skills[row]?.ageBasis ?? ""), ages, tag: ageTag };
  }
}
