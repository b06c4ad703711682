import type { CountSystem } from "../system";
import {
  type DeclaredSet,
  type Holds,
  has,
  isApart,
  isWithin,
  less,
  sizeOf,
  together,
  type Universe,
} from "./universe";

/** Combinations that all sets of a universe hold alike, put together: the fewest unknowns that tell its counts apart. */
class Parts {
  constructor(
    private readonly partOf: Int32Array,
    readonly size: number,
  ) {}

  /** How many people of the records are in each. */
  countsOf(families: Universe["families"]): Float64Array {
    const counts = new Float64Array(this.size);
    families.forEach((each, at) => {
      const part = this.partOf[at] as number;
      if (part >= 0) counts[part]! += each.length;
    });
    return counts;
  }

  in(holds: Holds): number[] {
    const own = new Set<number>();
    this.partOf.forEach((part, at) => {
      if (part >= 0 && has(holds, at)) own.add(part);
    });
    return [...own];
  }
}

interface Structure {
  readonly parts: Parts;
  /** Sets that no equation gives as a sum of others here, with the parts that each is the sum of. */
  readonly base: readonly { readonly at: number; readonly own: readonly number[] }[];
}

/** What lies between a count and some that are a part of it and have nobody in common. */
export interface Between {
  readonly whole: number;
  readonly parts: readonly number[];
  readonly holds: Holds;
  /** No other count fits in beside these parts: the relation says most. */
  readonly isRelation: boolean;
}

/** What is the same for all skills whose counts are cut alike is worked out once. */
export class Structures {
  private readonly known = new Map<string, Structure>();
  private readonly knownBetween = new Map<string, readonly Between[]>();
  private readonly sumsOf = new Map<number, number[][]>();

  constructor({ equations }: CountSystem) {
    for (const { terms, equals } of equations) {
      for (const { cell, coefficient } of terms) {
        const others = terms.filter((term) => term.cell !== cell);
        if (equals !== 0 || others.some((term) => term.coefficient !== -coefficient)) continue;
        this.sumsOf.set(cell, [...(this.sumsOf.get(cell) ?? []), others.map((term) => term.cell)]);
      }
    }
  }

  of({ sets, size }: Omit<Universe, "families">): Structure {
    const here = new Set(sets.map(({ cell }) => cell));
    const isSum = ({ cell }: DeclaredSet) =>
      (this.sumsOf.get(cell) ?? []).some((own) => own.length > 1 && own.every((each) => here.has(each)));
    const base = sets.flatMap((set, at) => (isSum(set) ? [] : [at]));
    const name = base.map((at) => `${at} ${sets[at]!.name}`).join("\n");
    const known = this.known.get(name);
    if (known !== undefined) return known;
    const parts = partsOf(
      base.map((at) => sets[at]!.holds),
      size,
    );
    const made = { parts, base: base.map((at) => ({ at, own: parts.in(sets[at]!.holds) })) };
    this.known.set(name, made);
    return made;
  }

  /** What lies between counts of different kinds; relations also with the counts that tie skills to children. */
  between({ sets }: Universe, what: "rests" | "relations"): readonly Between[] {
    const name = [what, ...sets.map(({ name: own }) => own)].join("\n");
    const known = this.knownBetween.get(name);
    if (known !== undefined) return known;
    const all = between(sets, what === "relations");
    this.knownBetween.set(name, all);
    return all;
  }
}

/** Splits all combinations by one set after another. */
function partsOf(sets: readonly Holds[], size: number): Parts {
  let partOf = new Int32Array(size);
  let count = 1;
  const isHeld = new Uint8Array(size);
  for (const holds of sets) {
    const names = new Map<number, number>();
    const next = new Int32Array(size);
    for (let at = 0; at < size; at += 1) {
      const bit = has(holds, at) ? 1 : 0;
      isHeld[at]! |= bit;
      const name = partOf[at]! * 2 + bit;
      const known = names.get(name) ?? names.size;
      names.set(name, known);
      next[at] = known;
    }
    partOf = next;
    count = names.size;
  }
  return new Parts(
    partOf.map((part, at) => (isHeld[at] === 1 ? part : -1)),
    count,
  );
}

function between(sets: readonly DeclaredSet[], withLinks: boolean): Between[] {
  const sized = sets.map((set, at) => ({ ...set, at, size: sizeOf(set.holds) }));
  const bySize = sized
    .filter(({ size, kind }) => size > 0 && (withLinks || kind !== "link"))
    .sort((a, b) => b.size - a.size || a.at - b.at);
  return bySize.flatMap((whole) => {
    const within = bySize.filter(
      (part) => part.kind !== whole.kind && part.size <= whole.size && isWithin(part.holds, whole.holds),
    );
    return betweenOf(whole, within);
  });
}

type Sized = DeclaredSet & { readonly at: number };

function betweenOf(whole: Sized, within: readonly Sized[]): Between[] {
  const found = new Map<string, Between>();
  const relate = (parts: readonly Sized[], isRelation: boolean) => {
    const union = together(
      parts.map(({ holds }) => holds),
      whole.holds.length,
    );
    const holds = less(whole.holds, union);
    const name = holds.join();
    if (!found.has(name)) found.set(name, { whole: whole.at, parts: parts.map(({ at }) => at), holds, isRelation });
    return union;
  };
  for (let starts = [...within]; starts.length > 0;) {
    const parts = apart(starts[0] as Sized, within);
    const union = relate(parts, true);
    const kinds = [...new Set(parts.map(({ kind }) => kind))];
    if (kinds.length > 1)
      kinds.forEach((kind) =>
        relate(
          parts.filter((part) => part.kind === kind),
          false,
        ),
      );
    starts = starts.filter(({ holds }) => !isWithin(holds, union));
  }
  within.forEach((part) => relate([part], false));
  return [...found.values()];
}

/** The first and, from the largest down, all that have nobody in common with those before. */
function apart(first: Sized, all: readonly Sized[]): Sized[] {
  const parts = [first];
  for (const each of all) if (parts.every(({ holds }) => isApart(holds, each.holds))) parts.push(each);
  return parts;
}
