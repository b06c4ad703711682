import type { Drafting } from "./drafting";
import { EDGE, EDGE_COLUMNS } from "./edge-columns";
import { EdgeTally } from "./edge-tally";
import type { EverFollowed } from "./ever-followed";
import { keyOf } from "./keys";

const TABLE = "reached-by-age";

/** The cells of reached-by-age and the equations between them. */
export class EdgeCells {
  private readonly tally: EdgeTally;
  private readonly made = new Map<number, number | null>();

  constructor(
    private readonly drafting: Drafting,
    private readonly ever: EverFollowed,
  ) {
    this.tally = new EdgeTally(drafting, ever.groupOf);
  }

  /** Skills and edges, in the order of the table. */
  each(): { readonly skill: number; readonly edge: number }[] {
    const { cohort, settings } = this.drafting.context;
    return cohort.skills.flatMap((_, skill) => settings.edges.map((__, edge) => ({ skill, edge })));
  }

  children(scope: number): number {
    return this.ever.children(scope, this.isPrinted(scope) ? TABLE : null);
  }

  /** Null where there is no such count at the edge. */
  cell(scope: number, skill: number, edge: number, column: number): number | null {
    const at = this.tally.indexOf(scope, skill, edge, column);
    const made = this.made.get(at) ?? this.make(scope, skill, edge, column);
    this.made.set(at, made);
    return made;
  }

  private make(scope: number, skill: number, edge: number, column: number): number | null {
    const { builder, context, scopes, skills, tags } = this.drafting;
    const { column: key, words, printed, loss, agesOf } = EDGE_COLUMNS[column]!;
    const ages = agesOf(context.settings.edges, edge);
    if (ages === null) return null;
    const isGroup = this.isPrinted(scope);
    const hidesZero =
      context.settings.wholeGroups === "hide" && isGroup && (column === EDGE.met || column === EDGE.notYet);
    const head = { ...this.ever.keyHead(), group: scopes.list[scope]!.key, tag: tags.attained };
    return builder.cell({
      key: keyOf({ ...head, subject: skills[skill] as string, ages, column: key }),
      place: `${TABLE}: ${this.rowWords(scope, skill, edge)}, ${words}`,
      ...this.tally.of(scope, skill, edge, column),
      showing: printed && isGroup ? "table" : "never",
      loss,
      zeroIsSecret: hidesZero,
    });
  }

  addRow(scope: number, skill: number, edge: number): void {
    const { builder } = this.drafting;
    const cell = (column: number, at = edge) => this.cell(scope, skill, at, column) as number;
    builder.adds(this.children(scope), [cell(EDGE.met), cell(EDGE.notMet), cell(EDGE.notKnown)]);
    builder.adds(cell(EDGE.notYet), [cell(EDGE.notMet), cell(EDGE.notKnown)]);
    builder.adds(cell(EDGE.possible), [cell(EDGE.met), cell(EDGE.notKnown)]);
    if (edge + 1 >= this.drafting.context.settings.edges.length) return;
    builder.adds(cell(EDGE.met, edge + 1), [cell(EDGE.met), cell(EDGE.metBetween)]);
    builder.adds(cell(EDGE.notMet), [cell(EDGE.notMet, edge + 1), cell(EDGE.notMetBetween)]);
  }

  addTotals(scope: number): void {
    const { builder } = this.drafting;
    const parts = this.ever.partsOf(scope);
    this.ever.addTotal(scope);
    for (const { skill, edge } of this.each()) {
      EDGE_COLUMNS.forEach((_, column) => {
        const whole = this.cell(scope, skill, edge, column);
        if (whole !== null)
          builder.adds(
            whole,
            parts.map((part) => this.cell(part, skill, edge, column) as number),
          );
      });
    }
  }

  /** `North, sits, by 6 months`. */
  rowWords(scope: number, skill: number, edge: number): string {
    const { context, scopes } = this.drafting;
    const { words } = scopes.list[scope]!;
    return [words, context.cohort.skills[skill]!.id, `by ${context.settings.edges[edge]} months`]
      .filter((each) => each !== "")
      .join(", ");
  }

  private isPrinted(scope: number): boolean {
    return this.drafting.scopes.list[scope]!.group !== null;
  }
}
