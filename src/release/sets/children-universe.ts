import { NOT_FOLLOWED } from "../../cohort/following";
import type { Drafting } from "../draft/drafting";
import { enrolmentsOf, madeUp, type Membership, membershipOf } from "./membership";
import type { KeyedCell } from "./program-day";
import { Combinations, familiesIn, type Universe } from "./universe";

/** Children of a group by which populations they belong to: followed on a day, in a period, ever, gone. Null: fewer than two. */
export function childrenUniverse(drafting: Drafting, group: string, cells: readonly KeyedCell[]): Universe | null {
  const isIn = enrolmentsOf(drafting.context, group);
  const known = cells.flatMap(({ cell, parts }) => {
    const membership = membershipOf(parts);
    return membership === null ? [] : [{ cell, membership, name: Object.values(parts).join("|") }];
  });
  if (isIn === null || known.length < 2) return null;
  const memberships = known.map(({ membership }) => membership);
  const combinations = new Combinations<readonly number[]>((values) => values.join(""));
  const { following, size } = madeUp([...new Set(memberships.flatMap(({ turns }) => turns))]);
  for (let child = 0; child < size; child += 1)
    combinations.add(valuesOf(memberships, { following, child, isIn: () => true }));
  const { cohort } = drafting.context;
  const at = cohort.ids.map((_, child) =>
    combinations.add(valuesOf(memberships, { following: cohort.following, child, isIn })),
  );
  const families = familiesIn(at, drafting.families.ofChild);
  const sets = known.map(({ cell, name, membership }, index) => ({
    cell,
    name,
    kind: membership.name,
    holds: combinations.holds((values) => values[index] === 1),
  }));
  return { families, sets, size: combinations.list.length };
}

type About = {
  readonly following: Parameters<Membership["is"]>[0];
  readonly child: number;
  readonly isIn: (row: number) => boolean;
};

function valuesOf(memberships: readonly Membership[], { following, child, isIn }: About): readonly number[] {
  return memberships.map(({ is }) => (is(following, child, (row) => row !== NOT_FOLLOWED && isIn(row)) ? 1 : 0));
}
