import { ATTAINED, AttainedTally, type Watched } from "./attained-tally";
import { LOSS } from "./builder";
import type { Drafting } from "./drafting";
import type { EverFollowed } from "./ever-followed";
import { ALL_AGES, keyOf, spanText } from "./keys";

const COLUMNS = [
  { key: "lookedAt", words: "children looked at", printed: true, loss: LOSS.children },
  { key: "hadAtFirstLook", words: "had at first look", printed: true, loss: LOSS.box },
  { key: "interval", words: "met between two looks", printed: true, loss: LOSS.box },
  { key: "neverMet", words: "not met by last look", printed: true, loss: LOSS.box },
  { key: "met", words: "ever met", printed: false, loss: LOSS.box },
  { key: "neverLookedAt", words: "never looked at", printed: false, loss: LOSS.box },
] as const;

/** The cells of age-when-met and the equations between them. */
export class AttainedCells {
  private readonly tally: AttainedTally;

  constructor(
    private readonly drafting: Drafting,
    private readonly ever: EverFollowed,
  ) {
    this.tally = new AttainedTally(drafting, ever.groupOf);
  }

  watched(scope: number, skill: number): readonly Watched[] {
    return this.tally.watched(scope, skill);
  }

  cell(scope: number, skill: number, column: number): number {
    const { builder, context, scopes, skills, tags } = this.drafting;
    const { key, words, printed, loss } = COLUMNS[column]!;
    const { key: group, words: groupWords, group: isGroup } = scopes.list[scope]!;
    const place = [groupWords, context.cohort.skills[skill]!.id, words].filter((each) => each !== "").join(", ");
    return builder.cell({
      key: keyOf({
        ...this.ever.keyHead(),
        group,
        subject: skills[skill]!,
        ages: ALL_AGES,
        column: key,
        tag: tags.attained,
      }),
      place: `age-when-met: ${place}`,
      ...this.tally.of(scope, skill, column),
      showing: printed && isGroup !== null ? "table" : "never",
      loss,
    });
  }

  addRow(scope: number, skill: number): void {
    const { builder } = this.drafting;
    const cell = (column: keyof typeof ATTAINED) => this.cell(scope, skill, ATTAINED[column]);
    builder.adds(cell("met"), [cell("hadAtFirstLook"), cell("interval")]);
    builder.adds(cell("children"), [cell("met"), cell("notMet")]);
    builder.adds(this.ever.children(scope, null), [cell("children"), cell("neverLooked")]);
    this.addAfterLastEdge(scope, skill);
  }

  addTotals(scope: number): void {
    const { builder, context } = this.drafting;
    const parts = this.ever.partsOf(scope);
    this.ever.addTotal(scope);
    context.cohort.skills.forEach((_, skill) => {
      COLUMNS.forEach((__, column) =>
        builder.adds(
          this.cell(scope, skill, column),
          parts.map((part) => this.cell(part, skill, column)),
        ),
      );
      this.addAfterLastEdge(scope, skill);
    });
  }

  /** Beside reached-by-age: who met it after the last age there. */
  private addAfterLastEdge(scope: number, skill: number): void {
    const { builder, context, scopes, skills, tags } = this.drafting;
    const last = context.settings.edges.at(-1) as number;
    const head = {
      ...this.ever.keyHead(),
      group: scopes.list[scope]!.key,
      subject: skills[skill]!,
      column: "met",
      tag: tags.attained,
    };
    const byLast = builder.find(keyOf({ ...head, ages: spanText(null, last) }));
    if (byLast === undefined) return;
    const after = builder.cell({
      key: keyOf({ ...head, ages: spanText(last, null) }),
      place: `${builder.at(this.cell(scope, skill, ATTAINED.met)).place} after ${last} months`,
      ...this.tally.of(scope, skill, ATTAINED.metAfterLast),
      showing: "never",
    });
    builder.adds(this.cell(scope, skill, ATTAINED.met), [byLast, after]);
  }
}
