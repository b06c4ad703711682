import { boxOn } from "../../cohort/boxes";
import { groupOfFollowed } from "../../tables/context";
import { SPLITS } from "./across-skills";
import type { AttainedCells } from "./attained-cells";
import type { BoxCells } from "./box-cells";
import type { Standing } from "./box-tally";
import type { Drafting } from "./drafting";
import type { EverFollowed } from "./ever-followed";
import { ALL_AGES, keyOf } from "./keys";
import { Tally } from "./tally";

/**
 * Ties age-when-met to met-by-band-left, skill by skill: children who left in the period were ever followed, and those who
 * are followed on the as-of date are others. A look after the last day can move a child to another count; how many it moved
 * is a count too, where it moved any.
 */
export function tieLeft(
  drafting: Drafting,
  left: BoxCells,
  standing: Standing,
  attained: AttainedCells,
  ever: EverFollowed,
  followed: BoxCells | null,
): void {
  const rest = new RestTally(drafting, standing, ever.groupOf, followed !== null);
  const tied = rest.movesNobody ? [...drafting.scopes.list.keys()] : [drafting.scopes.all];
  for (const scope of tied.filter((each) => ever.isHeld(each))) {
    drafting.skills.forEach((_, skill) =>
      SPLITS.forEach(({ whole, parts }, split) => {
        const own = (cells: BoxCells | null) =>
          cells?.isHeld(scope, skill, cells.tally.allAges)
            ? parts.map((column) => cells.cell(scope, skill, cells.tally.allAges, column))
            : [];
        const [others, moved] = [rest.cell(ever, scope, skill, split, "others"), rest.moved(ever, scope, skill, split)];
        drafting.builder.balances(
          [attained.cell(scope, skill, whole), ...moved],
          [...own(left), ...own(followed), others],
        );
      }),
    );
  }
}

const WORDS = {
  others: "neither left in the period nor counted beside",
  moved: "left in the period, moved by a later check",
};
type Kind = keyof typeof WORDS;

/** Children ever followed who neither left in the period nor stand in a table beside, by skill, in every scope. */
class RestTally {
  readonly movesNobody: boolean;
  private readonly tallies: Readonly<Record<Kind, Tally>>;
  private readonly hasMoved = SPLITS.map(() => false);

  constructor(
    private readonly drafting: Drafting,
    private readonly standing: Standing,
    groupOf: Int32Array,
    isBesideFollowed: boolean,
  ) {
    const { context, families, scopes } = drafting;
    const followedGroup = isBesideFollowed ? groupOfFollowed(context) : new Int32Array(groupOf.length).fill(-1);
    const isSame = (own: Int32Array) => own.every((group, child) => group < 0 || group === groupOf[child]);
    this.movesNobody = isSame(followedGroup) && isSame(standing.groupOf);
    const size = scopes.list.length * context.cohort.skills.length * SPLITS.length;
    this.tallies = { others: new Tally(size), moved: new Tally(size) };
    for (const child of families.inOrder) {
      if (groupOf[child]! >= 0 && followedGroup[child]! < 0) this.addChild(child, groupOf[child] as number);
    }
  }

  cell(ever: EverFollowed, scope: number, skill: number, split: number, kind: Kind): number {
    const { builder, context, scopes, skills, tags } = this.drafting;
    const { key: group, words } = scopes.list[scope]!;
    const what = `${WORDS[kind]}, ${SPLITS[split]!.words}, from ${context.from}`;
    const place = [words, context.cohort.skills[skill]!.id, WORDS[kind], SPLITS[split]!.words];
    const key = { ...ever.keyHead(), group, subject: skills[skill]!, ages: ALL_AGES, column: what, tag: tags.both };
    return builder.cell({
      key: keyOf(key),
      place: `between the tables: ${place.filter((each) => each !== "").join(", ")}`,
      ...this.tallies[kind].of(this.indexOf(scope, skill, split)),
      showing: "never",
    });
  }

  /** Nothing where no look moved a child: then leaving says where it stands for good. */
  moved(ever: EverFollowed, scope: number, skill: number, split: number): number[] {
    return this.hasMoved[split] ? [this.cell(ever, scope, skill, split, "moved")] : [];
  }

  private addChild(child: number, group: number): void {
    const { context, families, scopes } = this.drafting;
    const { cohort, attainment, asOf, settings } = context;
    const splitOn = (skill: number, day: number, read: Standing["attainment"]) => {
      const box = boxOn(cohort, read, child, skill, day, settings.recheckDays);
      return SPLITS.findIndex(({ boxes }) => boxes.some((each) => each === box));
    };
    const { attainment: whenLeft, dayOf } = this.standing;
    const isLeft = this.standing.groupOf[child]! >= 0;
    cohort.skills.forEach((_, skill) => {
      const now = splitOn(skill, asOf, attainment);
      const then = isLeft ? splitOn(skill, dayOf[child] as number, whenLeft) : -1;
      if (now === then) return;
      if (then >= 0) this.hasMoved[then] = true;
      for (const scope of scopes.ofGroup[group] ?? []) {
        this.tallies.others.add(this.indexOf(scope, skill, now), families.ofChild[child] as number);
        if (then >= 0) this.tallies.moved.add(this.indexOf(scope, skill, then), families.ofChild[child] as number);
      }
    });
  }

  private indexOf(scope: number, skill: number, split: number): number {
    return (scope * this.drafting.context.cohort.skills.length + skill) * SPLITS.length + split;
  }
}
