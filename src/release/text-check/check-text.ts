import type { Table } from "../../tables/table";
import type { PreparedRelease } from "../prepared";
import { isoInWords } from "../words/days";
import { claimsIn, numbersOf } from "./claims";
import { judgeClaim, type Judged, rowsFor, type TextRule } from "./claims-judged";
import { fineDates, namesPeriod } from "./dates";
import { numbersIn, type WrittenNumber } from "./numbers";
import { type Passage, passageOf, type Sentence, type Stretch } from "./passage";
import { type KnownNames, pointedAt } from "./people";
import { textRows, type TextRow } from "./rows";

export interface TextFinding extends Stretch {
  /** `leak` first of all; `advice` is only that. */
  readonly kind: Judged["kind"];
  readonly rule: TextRule;
  /** Counted from 1; null for the text as a whole. */
  readonly sentence: number | null;
  /** The words as written; "" for the text as a whole. */
  readonly written: string;
  readonly message: string;
}

export interface KnownSkill {
  readonly id: string;
  readonly label: string;
  readonly opensMonths: number | null;
  readonly closesMonths: number | null;
}

type Release = Pick<PreparedRelease, "asOf" | "from" | "rule" | "tables">;

/** What only the program knows: the true tables, the labels of skills, and names that no text may carry. */
export interface Inside {
  readonly truth: readonly Table[];
  readonly skills: readonly KnownSkill[];
  readonly names: KnownNames;
  /** Sentences that the release itself says: their figures agree, however they are put. */
  readonly said: readonly string[];
}

/**
 * A text that is to go out with a release, checked word by word (METHOD.md, section 7): every number against one row of
 * the release, names and dates that point at a person, percents without their base, the period, and, as advice only, words
 * that claim a cause. Each finding says where it is in the text as written.
 */
export function checkText(written: string, release: Release, { truth, skills, names, said }: Inside): TextFinding[] {
  const passage = passageOf(written);
  const place = placer(written, passage);
  const people = pointedAt(passage, names);
  const dates = fineDates(passage.text, release);
  const taken = [...people, ...dates];
  const ages = skills.flatMap(({ opensMonths, closesMonths }) => [opensMonths ?? [], closesMonths ?? []].flat());
  const rows = textRows(release.tables, truth, skills);
  const own = new Set(said.flatMap((each) => passageOf(each).sentences.map(({ text }) => plainly(text))));
  const figures = passage.sentences.flatMap((sentence) =>
    own.has(plainly(sentence.text)) ? saidByRelease(sentence) : inSentence(sentence, rows, release, taken, ages),
  );
  const found = [
    ...people.map(({ start, end, what }) => ({ ...pointsAt(what), start, end })),
    ...dates.map((each) => ({ ...FINE_DATE, ...each })),
    ...figures,
  ].map(place);
  const all = [...found, ...period(passage.text, found, release)];
  return ORDER.flatMap((kind) => all.filter((each) => each.kind === kind));
}

function plainly(sentence: string): string {
  return sentence.replace(/\s+/g, " ").trim().toLowerCase();
}

function saidByRelease({ start, text }: Sentence): Placed[] {
  const message = "this is a sentence of the release.";
  return numbersIn(text).length === 0
    ? []
    : [{ kind: "agrees", rule: "agrees", message, start, end: start + text.length }];
}

/** The findings as lines for the terminal. */
export function textLines(findings: readonly TextFinding[]): string[] {
  return findings.map(({ kind, sentence, written, message }) => {
    const where = [...(sentence === null ? [] : [`sentence ${sentence}`]), ...(written === "" ? [] : [`"${written}"`])];
    return `${HEADS[kind]}${where.length === 0 ? "" : ` (${where.join(", ")})`}: ${message}`;
  });
}

/** What each kind is called. */
export const HEADS: Readonly<Record<TextFinding["kind"], string>> = {
  leak: "Take out",
  mend: "Correct",
  advice: "Advice",
  agrees: "Agrees",
};

const ORDER: readonly TextFinding["kind"][] = ["leak", "mend", "advice", "agrees"];

type Placed = Omit<TextFinding, "sentence" | "written">;

function placer(written: string, passage: Passage): (found: Placed) => TextFinding {
  return ({ start, end, ...found }) => {
    const at = passage.sentences.findLastIndex((each) => each.start <= start);
    const stretch = passage.written(start, end);
    return {
      ...found,
      ...stretch,
      sentence: at < 0 ? null : at + 1,
      written: written.slice(stretch.start, stretch.end),
    };
  };
}

function pointsAt(what: string): Pick<Placed, "kind" | "rule" | "message"> {
  return { kind: "leak", rule: "names somebody", message: `this is ${what}: take it out.` };
}

const FINE_DATE: Pick<Placed, "kind" | "rule" | "message"> = {
  kind: "leak",
  rule: "fine date",
  message: "a date finer than the quarter can point at a child: name the quarter.",
};

function inSentence(
  { text, start }: Sentence,
  all: readonly TextRow[],
  { rule }: Release,
  taken: readonly Stretch[],
  publishedMonths: readonly number[],
): Placed[] {
  const isTaken = (from: number, to: number) => taken.some((each) => each.start < to && each.end > from);
  const isPublished = ({ kind, value }: WrittenNumber) => kind === "age" && publishedMonths.includes(value);
  const numbers = numbersIn(text).filter(
    (each) => !isTaken(start + each.start, start + each.end) && !isPublished(each),
  );
  const rows = rowsFor(text, all, rule.minimumCell);
  const claims = claimsIn(text, numbers);
  const after = ({ end }: { end: number }) => text.slice(end);
  const judged = claims.flatMap((claim) => judgeClaim(claim, rows, { after }).map((each) => placed(each, start)));
  const hasPair = claims.some((claim) => claim.of !== null && numbersOf(claim).length > 1);
  return [...judged, ...(hasPair ? [] : sharesInWords(text, start)), ...causes(text, start)];
}

function placed({ kind, rule, numbers, message }: Judged, start: number): Placed {
  const from = Math.min(...numbers.map((each) => each.start));
  const to = Math.max(...numbers.map((each) => each.end));
  return { kind, rule, message, start: start + from, end: start + to };
}

/** `Half of the children`, without the two numbers and without an age by which it was so. */
const SHARE_WORDS =
  /\b(?:half|(?:a|one|two)[- ]thirds?|(?:a|one|three)[- ]quarters?|most|nearly all|almost all|all|none|nine in ten|\d+ in (?:10|100)|\w+ in (?:ten|a hundred))\s+(?:of\s+)?(?:the\s+|our\s+|these\s+|those\s+)?(?:[a-z-]+\s+){0,2}(?:children|infants|toddlers|babies|referrals|families)\b/gi;

function sharesInWords(text: string, start: number): Placed[] {
  if (/\b\d+(?:\.\d+)?\s*(?:months|weeks)\b/i.test(text)) return [];
  const message = "a share in words needs its two numbers: write how many of how many in the same sentence.";
  return found(SHARE_WORDS, text, start, { kind: "mend", rule: "in words", message });
}

/** Wording that a table cannot carry: it counts, and compares nothing with what would have been. */
const CAUSES =
  /\b(?:caus(?:e[sd]?|ing)|led to|leads? to|result(?:s|ed)? in|due to|because of|thanks to|as a result of|prove[sdn]?|prevent(?:s|ed)?|effect(?:s|ive(?:ness)?)?|impact(?:s|ed)?|improved?|reduced?|increased?|doubled|tripled|halved|twice as|\w+ times as|works|helped|made (?:the )?children)\b/gi;

function causes(text: string, start: number): Placed[] {
  const message = "a reader can take this as a claim of cause, which these tables cannot carry: say what was counted.";
  return found(CAUSES, text, start, { kind: "advice", rule: "cause", message });
}

function found(pattern: RegExp, text: string, start: number, as: Pick<Placed, "kind" | "rule" | "message">): Placed[] {
  return [...text.matchAll(pattern)].map((match) => ({
    ...as,
    start: start + match.index,
    end: start + match.index + match[0].length,
  }));
}

function period(text: string, findings: readonly TextFinding[], release: Release): TextFinding[] {
  const hasFigures = findings.some(({ kind, rule }) => kind !== "advice" && rule !== "names somebody");
  if (!hasFigures || namesPeriod(text, release)) return [];
  const message = `the text does not say for when its figures are: name the period, ${isoInWords(release.from)} to ${isoInWords(release.asOf)}.`;
  return [{ kind: "mend", rule: "no period", sentence: null, written: "", start: 0, end: 0, message }];
}
