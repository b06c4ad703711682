import type { Groups } from "../../tables/groups";
import { groupText } from "./keys";

/** A group of a table, or what several of them add up to: everybody, or one value of one of the crossed columns. */
export interface Scope {
  /** As `groupText` writes it. */
  readonly key: string;
  readonly words: string;
  /** The group of the table that it is; null for a total that no table prints. */
  readonly group: number | null;
  /** Scopes that it is the sum of; empty for a group of the table. */
  readonly parts: readonly number[];
}

export interface Scopes {
  readonly list: readonly Scope[];
  /** The scopes that hold each group, its own among them. */
  readonly ofGroup: readonly (readonly number[])[];
  /** The scope of everybody. */
  readonly all: number;
}

type Values = readonly (string | null)[];

/** Groups and every total over one or more of their columns, so that `by` one column ties to `by` another. */
export function scopesOf(groups: Groups): Scopes {
  const headings = groups.columns.map(({ key }) => key);
  const order = headings.map((_, at) => at).sort((a, b) => (headings[a]! < headings[b]! ? -1 : 1));
  const indexOf = new Map<string, number>();
  const values: Values[] = [];
  const ofGroup = groups.values.map((own) =>
    subsets(order.length).map((kept) => {
      const scope: Values = own.map((value, at) => (kept.includes(at) ? value : null));
      const key = JSON.stringify(scope);
      const known = indexOf.get(key);
      if (known !== undefined) return known;
      indexOf.set(key, values.length);
      return values.push(scope) - 1;
    }),
  );
  const list = values.map((scope) => scopeOf(scope, values, headings, order, groups));
  const all = indexOf.get(JSON.stringify(headings.map(() => null))) ?? -1;
  return { list, ofGroup, all };
}

function scopeOf(
  scope: Values,
  all: readonly Values[],
  headings: readonly string[],
  order: readonly number[],
  groups: Groups,
): Scope {
  const open = order.find((at) => scope[at] === null);
  const pairs = scope.flatMap((value, at) => (value === null ? [] : [[headings[at] as string, value] as const]));
  const words = pairs.map(([heading, value]) => (value === "" ? `${heading} not recorded` : value)).join(", ");
  return {
    key: groupText(pairs),
    words: words === "" && headings.length > 0 ? "all groups together" : words,
    group: open === undefined ? groups.values.findIndex((own) => own.every((value, at) => value === scope[at])) : null,
    parts: open === undefined ? [] : all.flatMap((other, index) => (isPart(other, scope, open) ? [index] : [])),
  };
}

/** True where the other scope is the same one with a value in the open column. */
function isPart(other: Values, scope: Values, open: number): boolean {
  return other.every((value, at) => (at === open ? value !== null : value === scope[at]));
}

function subsets(size: number): number[][] {
  const all = Array.from({ length: size }, (_, at) => at);
  return Array.from({ length: 2 ** size }, (_, mask) => all.filter((at) => (mask >> at) & 1));
}
