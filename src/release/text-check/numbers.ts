/** A number as a person wrote it, and what kind of figure it is. */
export interface WrittenNumber {
  /** As written. */
  readonly written: string;
  /** Where it begins and ends in its sentence. */
  readonly start: number;
  readonly end: number;
  readonly value: number;
  readonly kind: "count" | "percent" | "decimal" | "age";
  /** Digits after the point. */
  readonly decimals: number;
  /** Whom a word close behind it counts; null where none does. */
  readonly counts: Counted | null;
}

export type Counted = "children" | "families" | "referrals" | "skill checks";

/** The numbers of one sentence, but for dates, years, quarters, sections of law and confidence levels. */
export function numbersIn(sentence: string): WrittenNumber[] {
  const text = maskNoFigures(sentence);
  return [...text.matchAll(NUMBER)].flatMap((match) => {
    const after = text.slice(match.index + match[0].length);
    const word = match.groups?.word;
    const place = { start: match.index, end: match.index + match[0].length };
    return word === undefined ? [digitNumber(match[0], after, place)] : wordNumber(word, after, place);
  });
}

/** The sentence with everything that looks like a figure and is none put out, at the same length. */
function maskNoFigures(sentence: string): string {
  return NO_FIGURES.reduce((rest, pattern) => rest.replace(pattern, (match) => " ".repeat(match.length)), sentence);
}

const UNITS = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven"];
const TEENS = ["twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"];
const TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
const SMALL = [...UNITS, ...TEENS];
const NUMBER_WORD = `(?:${TENS.join("|")})(?:[- ](?:${UNITS.slice(1, 10).join("|")}))?|${[...SMALL].reverse().join("|")}`;

const MONTH =
  "(?:January|February|March|April|May|June|July|August|September|October|November|December|Jan|Feb|Mar|Apr|Jun|Jul|Aug|Sept?|Oct|Nov|Dec)\\.?";

const NO_FIGURES: readonly RegExp[] = [
  new RegExp(`\\b\\d{1,2}(?:st|nd|rd|th)?\\s+(?:of\\s+)?${MONTH}(?:,?\\s+\\d{4})?\\b`, "gi"),
  new RegExp(`\\b${MONTH}\\s+\\d{1,2}(?:st|nd|rd|th)?(?:,?\\s+\\d{4})?\\b(?!\\s*(?:%|percent|children))`, "gi"),
  /\b\d{4}-(?:\d{2}-\d{2}|\d{2}|Q[1-4])\b|\bQ[1-4](?:\s+(?:of\s+)?\d{4})?\b/gi,
  /\b\d{1,2}[./]\d{1,2}[./](?:\d{4}|\d{2})\b/g,
  /\b(?:19|20)\d{2}(?:[-–/](?:19|20)?\d{2})?\b(?!\s*(?:%|percent|children|referrals|skill checks))/g,
  /\b\d+\s+(?:CFR|U\.?S\.?C\.?)\s+(?:part\s+)?[\d.]+(?:\([a-z0-9]+\))*/gi,
  /\b(?:section|table|figure|page|appendix|part|part\s+[A-C])\s+\d[\d.]*/gi,
  /\b\d{2}(?:\.\d+)?\s*%\s+(?:limits|confidence|interval|CI\b|likely)/gi,
  /\b(?:per|out of every|in every)\s+(?:100|1,?000|hundred)\b/gi,
  /\b(?:fewer|less) than (?:\d+|eleven|ten|five)\b/gi,
  /[$€£]\s?\d[\d,.]*(?:\s?(?:million|thousand|k|m)\b)?/gi,
  /^\s*\d{1,2}[.)]\s/g,
  /\b(?:grade|phase|year|goal|objective|statement|level|levels)\s+\d+(?:\s+to\s+\d+)?\b/gi,
  // "Nine in ten" is a share in words.
  new RegExp(`\\b(?:\\d+|${NUMBER_WORD})\\s+(?:in|out of)\\s+(?:10|100|ten|a hundred)\\b`, "gi"),
];

const NUMBER = new RegExp(
  `(?<![\\w.#-])(?:\\d{1,3}(?:,\\d{3})+|\\d+)(?:\\.\\d+)?(?![\\w]|-\\d)|\\b(?<word>${NUMBER_WORD})\\b`,
  "gi",
);

type Place = Pick<WrittenNumber, "start" | "end">;

function digitNumber(written: string, after: string, { start, end }: Place): WrittenNumber {
  const decimals = written.split(".")[1]?.length ?? 0;
  const sign = /^\s*(?:%|percent\b|per cent\b)/i.exec(after)?.[0] ?? "";
  const isPercent = sign !== "";
  return {
    written: isPercent ? `${written}%` : written,
    start,
    end: end + sign.length,
    value: Number(written.replaceAll(",", "")),
    kind: isPercent ? "percent" : isAge(after) ? "age" : decimals > 0 ? "decimal" : "count",
    decimals,
    counts: isPercent ? null : countedBy(after),
  };
}

/** A number in words is a figure only where it counts somebody, or is half of a pair: "one of the sites" is none. */
function wordNumber(written: string, after: string, place: Place): WrittenNumber[] {
  const counts = countedBy(after);
  if (counts === null || isAge(after)) return [];
  return [{ written, ...place, value: valueOfWord(written.toLowerCase()), kind: "count", decimals: 0, counts }];
}

function valueOfWord(word: string): number {
  const [first = "", second = ""] = word.split(/[- ]/);
  const tens = TENS.indexOf(first);
  return tens < 0 ? SMALL.indexOf(first) : (tens + 2) * 10 + Math.max(0, SMALL.indexOf(second));
}

function isAge(after: string): boolean {
  return /^(?:\s*(?:to|-|–|and)\s*<?\s*\d+(?:\.\d+)?)?[\s-]*(?:months?|weeks?|days?|years?)\b/i.test(after);
}

const COUNTED: readonly [Counted, string][] = [
  ["skill checks", "skill checks?|checks?|observations?"],
  ["referrals", "referrals?|plans?|evaluations?"],
  ["families", "famil(?:y|ies)|households?|siblings?"],
  ["children", "child|children|infants?|toddlers?|bab(?:y|ies)|twins?|girls?|boys?|kids?|participants?"],
];

function countedBy(after: string): Counted | null {
  const between =
    /^(?:[\s-]+(?:of|out|the|our|all|these|those|more|other|up-to-date|\d[\d,]*|\(\d[\d.,]*\s*%\)))*(?:[\s-]+[a-z]+)?[\s-]+/i;
  const rest = after.slice(between.exec(after)?.[0].length ?? 0);
  const short = after.trimStart();
  return (
    COUNTED.find(([, words]) => new RegExp(`^(?:${words})\\b`, "i").test(short))?.[0] ??
    COUNTED.find(([, words]) => new RegExp(`^(?:${words})\\b`, "i").test(rest))?.[0] ??
    null
  );
}
