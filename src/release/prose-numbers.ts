/** A number as a person wrote it, and what kind of figure it is. */
export interface ProseNumber {
  /** As written. */
  readonly written: string;
  readonly value: number;
  readonly kind: "count" | "percent" | "decimal" | "age";
  /** Digits after the point. */
  readonly decimals: number;
  /** A word such as "children" follows closely. */
  readonly ofPeople: boolean;
}

/** The numbers of one sentence, but for dates, years, quarters, sections of law and confidence levels. */
export function numbersIn(sentence: string): ProseNumber[] {
  const text = NO_FIGURES.reduce(
    (rest, pattern) => rest.replace(pattern, (match) => " ".repeat(match.length)),
    sentence,
  );
  return [...text.matchAll(NUMBER)].flatMap((match) => {
    const after = text.slice(match.index + match[0].length);
    const word = match.groups?.word;
    if (word !== undefined) return wordNumber(word, after);
    return [digitNumber(match[0], after)];
  });
}

/** True where a numerator stands with its denominator: `53 of 85`, `53 out of the 85`, `53/85`, `n = 85`. */
export function hasBothNumbers(sentence: string): boolean {
  const [number, between] = ["\\d[\\d,]*", "\\s*(?:of|out of|\\/)\\s*(?:the\\s+|all\\s+|those\\s+)*"];
  return new RegExp(`${number}${between}${number}|\\bn\\s*=\\s*${number}`, "i").test(sentence);
}

/** Sentences, by their full stops and by lines. */
export function sentencesIn(prose: string): string[] {
  return prose
    .normalize("NFKC")
    .split(/(?<=[.!?])\s+|\n+/)
    .map((each) => each.trim())
    .filter((each) => each !== "");
}

const WORDS = [
  ...["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"],
  ...["thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"],
];

const MONTH =
  "(?:January|February|March|April|May|June|July|August|September|October|November|December|Jan|Feb|Mar|Apr|Jun|Jul|Aug|Sept?|Oct|Nov|Dec)\\.?";

const NO_FIGURES: readonly RegExp[] = [
  new RegExp(`\\b\\d{1,2}(?:st|nd|rd|th)?\\s+(?:of\\s+)?${MONTH}(?:,?\\s+\\d{4})?\\b`, "gi"),
  new RegExp(`\\b${MONTH}\\s+\\d{1,2}(?:st|nd|rd|th)?(?:,?\\s+\\d{4})?\\b(?!\\s*(?:%|percent|children))`, "gi"),
  /\b\d{4}-(?:\d{2}-\d{2}|\d{2}|Q[1-4])\b|\bQ[1-4](?:\s+(?:of\s+)?\d{4})?\b/gi,
  /\b(?:19|20)\d{2}\b(?!\s*(?:%|percent|children|referrals|child-))/g,
  /\b\d+\s+(?:CFR|U\.?S\.?C\.?)\s+(?:part\s+)?[\d.]+(?:\([a-z0-9]+\))*/gi,
  /\bsection\s+[\d.]+/gi,
  /\b\d{2}(?:\.\d+)?\s*%\s+(?:limits|confidence|interval|CI\b)/gi,
  /\bper\s+(?:100|1,?000)\b/gi,
  /^\s*\d{1,2}[.)]\s/g,
  // "Nine in ten" is a share in words.
  new RegExp(`\\b(?:\\d+|${WORDS.join("|")})\\s+in\\s+(?:10|100|ten|a hundred)\\b`, "gi"),
];

const NUMBER = new RegExp(
  `(?<![\\w.])(?:\\d{1,3}(?:,\\d{3})+|\\d+)(?:\\.\\d+)?(?![\\w])|\\b(?<word>${WORDS.join("|")})\\b`,
  "gi",
);

function digitNumber(written: string, after: string): ProseNumber {
  const decimals = written.split(".")[1]?.length ?? 0;
  const isPercent = /^\s*(?:%|percent\b|per cent\b)/i.test(after);
  return {
    written: isPercent ? `${written}%` : written,
    value: Number(written.replaceAll(",", "")),
    kind: isPercent ? "percent" : isAge(after) ? "age" : decimals > 0 ? "decimal" : "count",
    decimals,
    ofPeople: !isPercent && areOfPeople(after),
  };
}

/** A number in words is a figure only where it counts somebody: "one of the sites" is none. */
function wordNumber(written: string, after: string): ProseNumber[] {
  if (!areOfPeople(after) || isAge(after)) return [];
  return [{ written, value: WORDS.indexOf(written.toLowerCase()), kind: "count", decimals: 0, ofPeople: true }];
}

function isAge(after: string): boolean {
  return /^(?:\s*(?:to|-|–|and)\s*<?\s*\d+)?[\s-]*(?:months?|weeks?|days?|years?)\b/i.test(after);
}

function areOfPeople(after: string): boolean {
  return /^(?:[\s-]+(?:of|the|our|all|these|those|more|other|\d[\d,]*)){0,4}(?:[\s-]+[a-z]+)?[\s-]+(?:child|children|infants?|toddlers?|bab(?:y|ies)|famil(?:y|ies)|twins?|girls?|boys?|referrals?|child-skills)\b/i.test(
    after,
  );
}
