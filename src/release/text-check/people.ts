import { findGroupColumn } from "../../records/children/groups";
import type { Records } from "../../records/records";
import type { Passage } from "./passage";

/** Something in a text that points at a person, or at a group that the release does not have. */
export interface Pointed {
  readonly start: number;
  readonly end: number;
  readonly what: string;
}

/** What the records know by name: looked for in a text, and never printed. */
export interface KnownNames {
  /** By their letters and digits alone, without zeros in front of digits. */
  readonly codes: ReadonlyMap<string, string>;
  /** Words without a digit, as the records write them. */
  readonly words: ReadonlyMap<string, string>;
  /** Identifiers that are bare numbers. */
  readonly numbers: ReadonlySet<string>;
}

const CHILD = "the identifier of a child";

/** @param by - the columns that the release is grouped by: their values may be named */
export function knownNames(
  { children, enrolments, observations }: Pick<Records, "children" | "enrolments" | "observations">,
  by: readonly string[],
): KnownNames {
  const released = new Set(by.map((name) => findGroupColumn(enrolments.columns, name)));
  const codes = new Map<string, string>();
  const words = new Map<string, string>();
  const numbers = new Set<string>();
  const add = (texts: readonly string[], what: string) => {
    for (const text of new Set(texts.map((each) => each.normalize("NFKC").trim()))) {
      if (/^\d+$/.test(text)) numbers.add(text);
      else if (/\d/.test(text)) codes.set(codeOf(text), what);
      else if (text.length >= SHORTEST_WORD) words.set(text, what);
    }
  };
  for (const column of enrolments.columns) {
    if (released.has(column)) continue;
    if (column.heading === "Therapist") add(column.values, "the code of a staff member");
    else if (column.heading === "Site") add(column.values, "a site, and the release has no sites");
    else if (isGroup(column.values)) add(column.values.filter(isProperName), "a group that the release does not have");
  }
  add(observations.observers, "the code of a staff member");
  add(children.family, "the code of a family");
  add(children.ids, CHILD);
  return { codes, words, numbers };
}

const SHORTEST_WORD = 3;

function isGroup(values: readonly string[]): boolean {
  return new Set(values).size <= Math.max(values.length / 2, 1);
}

function isProperName(text: string): boolean {
  return /^\p{Lu}.{3,}/u.test(text);
}

/** `AF-0042`, `af 42` and `AF42` are one code. */
function codeOf(text: string): string {
  return text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "")
    .replace(/(?<!\d)0+(?=\d)/g, "");
}

/** Identifiers and codes, sites and groups that the release does not have, and words that single out one child. */
export function pointedAt(passage: Passage, known: KnownNames): Pointed[] {
  const found = [...codesIn(passage, known), ...wordsIn(passage, known), ...singledOut(passage)];
  return found.filter((each, at) => !found.some((other, place) => place !== at && covers(other, each, place < at)));
}

function covers(other: Pointed, each: Pointed, isFirst: boolean): boolean {
  const isSame = other.start === each.start && other.end === each.end;
  return isSame ? isFirst : other.start <= each.start && other.end >= each.end;
}

function codesIn({ text }: Passage, { codes, numbers }: KnownNames): Pointed[] {
  const pieces = [...text.matchAll(/[\p{L}\p{N}]+(?:[-_./][\p{L}\p{N}]+)*/gu)];
  return pieces.flatMap((piece, at) => {
    const next = pieces[at + 1];
    const gap = next && text.slice(piece.index + piece[0].length, next.index);
    const joined = next && /^\s*[#-]?\s*$/.test(gap ?? "x") ? `${piece[0]}${next[0]}` : null;
    const found: Pointed[] = [];
    const what = codes.get(codeOf(piece[0]));
    if (what !== undefined) found.push({ ...stretchOf(piece), what });
    const both = joined === null ? undefined : codes.get(codeOf(joined));
    if (both !== undefined && next && what === undefined)
      found.push({ start: piece.index, end: next.index + next[0].length, what: both });
    if (isNumberOfSomebody(text, piece, numbers)) found.push({ ...stretchOf(piece), what: CHILD });
    return found;
  });
}

function stretchOf(piece: RegExpExecArray): { start: number; end: number } {
  return { start: piece.index, end: piece.index + piece[0].length };
}

/** A bare number is an identifier where it is long, begins with a zero, or a word before it says so. */
function isNumberOfSomebody(text: string, piece: RegExpExecArray, numbers: ReadonlySet<string>): boolean {
  if (!/^\d+$/.test(piece[0]) || !numbers.has(piece[0])) return false;
  if (/^\d{5,}$|^0\d+$/.test(piece[0])) return true;
  const before = text.slice(Math.max(0, piece.index - 20), piece.index);
  return /(?:\b(?:child|id|ident\w*|record|file|case|participant|number|no\.?)\s*(?:#|no\.?|number|id)?\s*:?\s*|#\s*)$/i.test(
    before,
  );
}

function wordsIn({ text }: Passage, { words }: KnownNames): Pointed[] {
  return [...words].flatMap(([word, what]) => {
    const isLong = word.length >= 6 || /\s/.test(word);
    const pattern = new RegExp(`(?<![\\p{L}\\p{N}])${escaped(word)}(?![\\p{L}\\p{N}])`, isLong ? "giu" : "gu");
    return [...text.matchAll(pattern)].map((match) => ({ ...stretchOf(match), what }));
  });
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/-]/g, "\\$&");
}

const ONE =
  "girl|boy|child|infant|toddler|baby|newborn|twin|sibling|family|son|daughter|mother|father|foster child|preemie";
const SINGLE: readonly RegExp[] = [
  new RegExp(
    `\\b(?:the|our)\\s+(?:only|single|sole|lone|youngest|oldest|smallest|one)\\s+(?:[a-z-]+\\s+){0,2}(?:${ONE})\\b`,
    "gi",
  ),
  new RegExp(`\\b(?:only|just)\\s+one\\s+(?:[a-z-]+\\s+){0,2}(?:${ONE})\\b`, "gi"),
  new RegExp(
    `\\b(?:one|a(?:nother)?)\\s+(?:little\\s+|young\\s+)?(?:girl|boy|toddler|baby|infant|child|mother|family)\\s+(?:who|whose|in our|with|named|called|at our|was|had|has|lost|came)\\b`,
    "gi",
  ),
  /\b(?:the|our|both)\s+(?:twins|triplets|siblings|brothers|sisters)\b/gi,
  /\b(?:his|her)\s+(?:mother|father|parents?|grandmother|family|twin|brother|sister)\b/gi,
];

function singledOut({ text }: Passage): Pointed[] {
  const what = "words that single out one child or family";
  return SINGLE.flatMap((pattern) => [...text.matchAll(pattern)].map((match) => ({ ...stretchOf(match), what })));
}
