import type { Counted, WrittenNumber } from "./numbers";

/** What a sentence says with one or more numbers that belong together: `53 of 85 (62.4%)`. */
export interface Claim {
  readonly count: WrittenNumber | null;
  readonly of: WrittenNumber | null;
  readonly percent: WrittenNumber | null;
  /** An age, a time or a decimal that stands alone. */
  readonly other: WrittenNumber | null;
  readonly counts: Counted | null;
}

/** Puts the numbers of a sentence together: pairs first, then each percent to the pair, or the `n`, next to it. */
export function claimsIn(sentence: string, numbers: readonly WrittenNumber[]): Claim[] {
  const free = new Set(numbers);
  const pairs = pairsIn(sentence, numbers, free);
  const bases = basesIn(sentence, free);
  const bound = [...pairs, ...bases];
  // One pair and one percent in a sentence belong together, however far apart.
  const isOnly = bound.length === 1 && [...free].filter(({ kind }) => kind === "percent").length === 1;
  const claims = bound.map((claim) => withPercent(sentence, claim, free, isOnly ? Infinity : FARTHEST));
  return [...claims, ...[...free].map(alone)].sort((a, b) => startOf(a) - startOf(b));
}

/** The numbers of a claim, in the order written. */
export function numbersOf({ count, of, percent, other }: Claim): WrittenNumber[] {
  return [count, of, percent, other].flatMap((each) => each ?? []).sort((a, b) => a.start - b.start);
}

function startOf(claim: Claim): number {
  return numbersOf(claim)[0]?.start ?? 0;
}

function alone(number: WrittenNumber): Claim {
  const none = { count: null, of: null, percent: null, other: null, counts: number.counts };
  if (number.kind === "percent") return { ...none, percent: number };
  return number.kind === "count" ? { ...none, count: number } : { ...none, other: number };
}

/** `53 of 85`, `53 children (62.4%) of the 85`, `53 out of all 85`, `53/85`. */
const BETWEEN_PAIR =
  /^\s*(?:(?:children|infants|toddlers|babies|referrals|plans|skill checks|families)\s*)?(?:\(\d[\d.]*\s*(?:%|percent)\)\s*)?(?:of|out of|among|\/)\s*(?:(?:the|all|those|these|our|a total of)\s+)*$/i;

function pairsIn(sentence: string, numbers: readonly WrittenNumber[], free: Set<WrittenNumber>): Claim[] {
  const counts = numbers.filter(({ kind }) => kind === "count");
  return counts.slice(0, -1).flatMap((count, at) => {
    const next = counts[at + 1]!;
    if (!free.has(count)) return [];
    const isTurned = isTurnedPair(sentence, count, next);
    if (!isTurned && !BETWEEN_PAIR.test(sentence.slice(count.end, next.start))) return [];
    free.delete(count);
    free.delete(next);
    const [some, of] = isTurned ? [next, count] : [count, next];
    return [{ count: some, of, percent: null, other: null, counts: of.counts ?? some.counts }];
  });
}

/** `Of the 85 children checked, 53`. */
function isTurnedPair(sentence: string, of: WrittenNumber, count: WrittenNumber): boolean {
  const before = /\b(?:of|among)\s+(?:(?:the|all|those|these|our)\s+)*$/i.test(sentence.slice(0, of.start));
  const between = sentence.slice(of.end, count.start);
  return before && count.value <= of.value && /^[^,;:.]{1,90}, (?:only |an estimated |at least )?$/.test(between);
}

/** `n = 85`. */
function basesIn(sentence: string, free: Set<WrittenNumber>): Claim[] {
  return [...free].flatMap((of) => {
    if (of.kind !== "count" || !/\b[nN]\s*=\s*$/.test(sentence.slice(0, of.start))) return [];
    free.delete(of);
    return [{ count: null, of, percent: null, other: null, counts: of.counts }];
  });
}

const FARTHEST = 60;

function withPercent(sentence: string, claim: Claim, free: Set<WrittenNumber>, farthest: number): Claim {
  const own = numbersOf(claim);
  const [from, to] = [own[0]!.start, own[own.length - 1]!.end];
  const inside = [...free].find(({ kind, start, end }) => kind === "percent" && start > from && end < to);
  const near = [...free]
    .filter(({ kind, start, end }) => kind === "percent" && Math.max(from - end, start - to) <= farthest)
    .filter((each) => isNext(sentence, each, from, to, free))
    .sort((a, b) => gap(a, from, to) - gap(b, from, to))[0];
  const percent = inside ?? near;
  if (!percent) return claim;
  free.delete(percent);
  return { ...claim, percent };
}

function gap({ start, end }: WrittenNumber, from: number, to: number): number {
  return start >= to ? start - to : from - end;
}

/** True where no other number, semicolon or "while" comes between a percent and its pair. */
function isNext(
  sentence: string,
  percent: WrittenNumber,
  from: number,
  to: number,
  free: ReadonlySet<WrittenNumber>,
): boolean {
  const [start, end] = percent.start >= to ? [to, percent.start] : [percent.end, from];
  const between = sentence.slice(start, end);
  if (/[;:]|\b(?:while|whereas|but)\b/i.test(between)) return false;
  return ![...free].some((each) => each !== percent && each.kind !== "age" && each.start >= start && each.end <= end);
}
