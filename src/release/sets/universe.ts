/**
 * People told apart by a few attributes. The combinations of their values that can exist are listed once; a count is the
 * set of those that it counts. So every count is a sum of the same unknowns, and whatever two counts say of one another
 * follows from what they are made of (METHOD.md, section 7).
 */
export interface Universe {
  /** Of each combination that holds children of the records, the family of every one of them. */
  readonly families: ReadonlyMap<number, readonly number[]>;
  readonly sets: readonly DeclaredSet[];
  /** How many combinations there are. */
  readonly size: number;
}

export interface DeclaredSet {
  /** Of the system. */
  readonly cell: number;
  /** The same for the same set of another skill. */
  readonly name: string;
  /** What tables count together: one population on one day. Their own equations tie counts of one kind. */
  readonly kind: string;
  readonly holds: Holds;
}

/** A bit for each combination, 1 where it is counted. */
export type Holds = Uint32Array;

/** Combinations under their names, with those of the records that nobody foresaw. */
export class Combinations<Values> {
  readonly list: Values[] = [];
  private readonly indexOf = new Map<string, number>();

  constructor(private readonly nameOf: (values: Values) => string) {}

  add(values: Values): number {
    const name = this.nameOf(values);
    const known = this.indexOf.get(name);
    if (known !== undefined) return known;
    this.indexOf.set(name, this.list.length);
    return this.list.push(values) - 1;
  }

  holds(is: (values: Values) => boolean): Holds {
    const holds = new Uint32Array(Math.ceil(this.list.length / 32));
    this.list.forEach((values, at) => {
      if (is(values)) holds[at >> 5]! |= 1 << (at & 31);
    });
    return holds;
  }
}

export function has(holds: Holds, at: number): boolean {
  return ((holds[at >> 5]! >>> (at & 31)) & 1) === 1;
}

export function isWithin(part: Holds, whole: Holds): boolean {
  for (let at = 0; at < part.length; at += 1) if ((part[at]! & ~whole[at]!) !== 0) return false;
  return true;
}

export function isApart(one: Holds, other: Holds): boolean {
  for (let at = 0; at < one.length; at += 1) if ((one[at]! & other[at]!) !== 0) return false;
  return true;
}

export function isEmpty(holds: Holds): boolean {
  return holds.every((word) => word === 0);
}

export function sizeOf(holds: Holds): number {
  let size = 0;
  for (let word of holds) for (; word !== 0; word &= word - 1) size += 1;
  return size;
}

export function together(all: readonly Holds[], length: number): Holds {
  const union = new Uint32Array(length);
  for (const holds of all) for (let at = 0; at < length; at += 1) union[at]! |= holds[at]!;
  return union;
}

/** The whole less what a part holds. */
export function less(whole: Holds, part: Holds): Holds {
  return whole.map((word, at) => word & ~part[at]!);
}

/** How many children of the records a set holds, and of how many families. */
export function peopleOf(
  families: Universe["families"],
  holds: Holds,
): { readonly count: number; readonly contributors: number } {
  const own = new Set<number>();
  let count = 0;
  families.forEach((each, at) => {
    if (!has(holds, at)) return;
    count += each.length;
    each.forEach((family) => own.add(family));
  });
  return { count, contributors: own.size };
}

/** @param combinationOf - of each child; -1: none */
export function familiesIn(combinationOf: ArrayLike<number>, familyOf: ArrayLike<number>): Map<number, number[]> {
  const families = new Map<number, number[]>();
  for (let child = 0; child < combinationOf.length; child += 1) {
    const at = combinationOf[child] as number;
    if (at < 0) continue;
    const own = families.get(at) ?? [];
    own.push(familyOf[child] as number);
    families.set(at, own);
  }
  return families;
}
