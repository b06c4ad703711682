import { BOX, boxOn } from "../../cohort/boxes";
import { groupOfFollowed } from "../../tables/context";
import type { AttainedCells } from "./attained-cells";
import { ATTAINED } from "./attained-tally";
import type { BoxCells } from "./box-cells";
import { AT } from "./box-columns";
import type { Drafting } from "./drafting";
import type { EverFollowed } from "./ever-followed";
import { ALL_AGES, keyOf } from "./keys";
import { Tally } from "./tally";

/** Of the children ever followed some are followed still: the others are what two tables give away of a skill. */
export const SPLITS = [
  {
    whole: ATTAINED.met,
    parts: [AT.met, AT.lost],
    boxes: [BOX.hadAtFirstLook, BOX.gained, BOX.lost],
    words: "ever met it",
  },
  {
    whole: ATTAINED.notMet,
    parts: [AT.notMet, AT.outOfDate],
    boxes: [BOX.notMet, BOX.outOfDate],
    words: "not met by last look",
  },
  { whole: ATTAINED.neverLooked, parts: [AT.notAssessed], boxes: [BOX.notAssessed], words: "never looked at" },
];

/** Ties age-when-met to met-by-band, skill by skill: for everybody, and by group where no child has changed its group. */
export function tieSkills(drafting: Drafting, followed: BoxCells, attained: AttainedCells, ever: EverFollowed): void {
  const { builder, scopes, context } = drafting;
  const gone = new GoneTally(drafting, ever.groupOf);
  const tied = gone.movesNobody ? [...scopes.list.keys()] : [scopes.all];
  for (const scope of tied.filter((each) => ever.isHeld(each))) {
    context.cohort.skills.forEach(({ id }, skill) =>
      SPLITS.forEach(({ whole, parts, words }, split) => {
        const { key: group, words: groupWords } = scopes.list[scope]!;
        const rest = builder.cell({
          key: keyOf({
            ...ever.keyHead(),
            group,
            subject: drafting.skills[skill]!,
            ages: ALL_AGES,
            column: `gone, ${words}`,
            tag: drafting.tags.both,
          }),
          place: `between the tables: ${[groupWords, id].filter((each) => each !== "").join(", ")}, followed no more, ${words}`,
          ...gone.of(scope, skill, split),
          showing: "never",
        });
        const held = followed.isHeld(scope, skill, followed.tally.allAges);
        const own = held ? parts.map((column) => followed.cell(scope, skill, followed.tally.allAges, column)) : [];
        builder.adds(attained.cell(scope, skill, whole), [...own, rest]);
      }),
    );
  }
}

/** Children ever followed who are followed no more, by skill, in every scope. */
class GoneTally {
  readonly movesNobody: boolean;
  private readonly tally: Tally;

  constructor(
    private readonly drafting: Drafting,
    groupOf: Int32Array,
  ) {
    const { scopes, context, families } = drafting;
    const followedGroup = groupOfFollowed(context);
    this.movesNobody = followedGroup.every((group, child) => group < 0 || group === groupOf[child]);
    this.tally = new Tally(scopes.list.length * context.cohort.skills.length * SPLITS.length);
    for (const child of families.inOrder) {
      if (groupOf[child]! >= 0 && followedGroup[child]! < 0) this.addChild(child, groupOf[child] as number);
    }
  }

  of(scope: number, skill: number, split: number): ReturnType<Tally["of"]> {
    return this.tally.of(this.indexOf(scope, skill, split));
  }

  private addChild(child: number, group: number): void {
    const { context, families, scopes } = this.drafting;
    const { cohort, attainment, asOf, settings } = context;
    cohort.skills.forEach((_, skill) => {
      const box = boxOn(cohort, attainment, child, skill, asOf, settings.recheckDays);
      const split = SPLITS.findIndex(({ boxes }) => boxes.some((each) => each === box));
      for (const scope of scopes.ofGroup[group] ?? []) {
        this.tally.add(this.indexOf(scope, skill, split), families.ofChild[child] as number);
      }
    });
  }

  private indexOf(scope: number, skill: number, split: number): number {
    return (scope * this.drafting.context.cohort.skills.length + skill) * SPLITS.length + split;
  }
}
