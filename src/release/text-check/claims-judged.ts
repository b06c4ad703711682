import { type Claim, numbersOf } from "./claims";
import type { WrittenNumber } from "./numbers";
import type { ReleasableId } from "../../tables/table";
import type { Figure, TextRow } from "./rows";

/** What is said of one claim, before it is put in its place in the text. */
export interface Judged {
  readonly kind: "leak" | "mend" | "advice" | "agrees";
  readonly rule: TextRule;
  /** The numbers that it is about. */
  readonly numbers: readonly WrittenNumber[];
  readonly message: string;
}

export type TextRule =
  | "held back"
  | "small count"
  | "names somebody"
  | "fine date"
  | "no table"
  | "other row"
  | "arithmetic"
  | "no base"
  | "no period"
  | "in words"
  | "cause"
  | "not checked"
  | "agrees";

/** The rows of a release, and those of them that fit the names in a sentence. */
export interface Rows {
  readonly sentence: string;
  readonly all: readonly TextRow[];
  readonly fitting: readonly TextRow[];
  /** Keys of the names that the sentence has, such as skill or step. */
  readonly named: ReadonlySet<string>;
  readonly minimumCell: number;
}

/** The rows that a sentence can be about: where it names a site, a skill or a band, only rows of that name. */
export function rowsFor(sentence: string, all: readonly TextRow[], minimumCell: number): Rows {
  const folded = sentence.toLowerCase();
  const named = new Map<string, Set<string>>();
  for (const { names } of all) {
    for (const [key, texts] of names) {
      if (!texts.some((text) => hasWord(folded, text))) continue;
      named.set(key, (named.get(key) ?? new Set()).add(texts[0]!));
    }
  }
  const fits = ({ names }: TextRow) =>
    [...named].every(([key, texts]) => !names.has(key) || texts.has(names.get(key)![0]!));
  return { sentence: folded, all, fitting: all.filter(fits), named: new Set(named.keys()), minimumCell };
}

function hasWord(folded: string, text: string): boolean {
  if (text.length < 3) return false;
  const at = folded.indexOf(text);
  if (at < 0) return false;
  const isLetter = (character: string | undefined) => character !== undefined && /[\p{L}\p{N}]/u.test(character);
  return !isLetter(folded[at - 1]) && !isLetter(folded[at + text.length]);
}

/** A number agrees only together with the others of its claim, in one row that the sentence can be about. */
export function judgeClaim(
  claim: Claim,
  rows: Rows,
  wording: { readonly after: (number: WrittenNumber) => string },
): Judged[] {
  if (claim.of !== null) return judgeTogether(claim, claim.of, rows);
  if (claim.percent !== null) return [judgePercent(claim.percent, claim, rows)];
  if (claim.count !== null) return [judgeCount(claim.count, claim, rows, wording.after(claim.count))];
  return claim.other === null ? [] : judgeOther(claim.other, rows);
}

function judgeTogether(claim: Claim, of: WrittenNumber, rows: Rows): Judged[] {
  const numbers = numbersOf(claim);
  const { count, percent } = claim;
  if (count && percent && !isNear(percent, (100 * count.value) / of.value)) {
    const right = ((100 * count.value) / of.value).toFixed(Math.max(1, percent.decimals));
    const message = `${count.written} of ${of.written} is ${right}%, not ${percent.written}: correct one of them.`;
    return [
      { kind: "mend", rule: "arithmetic", numbers, message },
      ...judgeTogether({ ...claim, percent: null }, of, rows),
    ];
  }
  const holds = (row: TextRow) => holdsClaim(row, claim, of);
  const fitting = likeliest(rows.fitting.filter(holds), rows.sentence);
  if (fitting) return [agrees(numbers, placeIn(fitting, (count ?? of).value))];
  const leak = leakOf(claim, rows);
  if (leak) return [leak];
  const other = rows.all.find(holds);
  if (other) {
    const message = `these numbers are those of ${placeIn(other, of.value)}, and the sentence names another group: correct the one or the other.`;
    return [{ kind: "mend", rule: "other row", numbers, message }];
  }
  const message = "no row of the release shows these numbers together: correct them, or say where they come from.";
  return [{ kind: "mend", rule: "no table", numbers, message }];
}

/** Of rows with the same numbers, the one whose names the sentence uses most words of: "walked" is of "walks alone". */
function likeliest(rows: readonly TextRow[], sentence: string): TextRow | undefined {
  const said = new Set(stemsOf(sentence));
  const score = ({ names }: TextRow) =>
    Math.max(
      0,
      ...[...names.values()].map((texts) => stemsOf(texts.join(" ")).filter((stem) => said.has(stem)).length),
    );
  return [...rows].sort((a, b) => score(b) - score(a))[0];
}

function stemsOf(text: string): string[] {
  return [...new Set([...text.toLowerCase().matchAll(/\p{L}{4,}/gu)].map(([word]) => word.slice(0, STEM)))];
}

const STEM = 4;

function holdsClaim({ shown }: TextRow, { count, percent, counts }: Claim, of: WrittenNumber): boolean {
  const has = ({ value }: WrittenNumber) =>
    shown.some((figure) => figure.kind === "count" && figure.value === value && isOfSameKind(figure, counts));
  const hasShare = () =>
    shown.some((figure) => figure.kind === "share" && percent !== null && isNear(percent, figure.value));
  return has(of) && (count !== null ? has(count) : percent === null || hasShare());
}

function isOfSameKind({ counts }: Figure, asked: Claim["counts"]): boolean {
  return asked === null || counts === null || asked === counts || asked === "families";
}

function leakOf(claim: Claim, rows: Rows): Judged | null {
  // a percent beside its two numbers says what they say
  const hasBoth = claim.count !== null && claim.of !== null;
  const numbers = numbersOf(hasBoth ? { ...claim, percent: null } : claim);
  for (const number of numbers) {
    const held = number.kind === "percent" ? heldShare(number, rows) : heldCount(number, claim, rows);
    if (held) return { kind: "leak", rule: "held back", numbers: [number], message: heldMessage(held) };
    if (isSmall(number, claim, rows)) return small(number, rows);
  }
  return null;
}

function judgePercent(percent: WrittenNumber, claim: Claim, rows: Rows): Judged {
  const isShown = rows.fitting.some(({ shown }) =>
    shown.some((each) => each.kind === "share" && isNear(percent, each.value)),
  );
  const leak = isShown ? null : leakOf(claim, rows);
  if (leak) return leak;
  const message = "a percent needs its two numbers: write how many of how many in the same sentence.";
  return { kind: "mend", rule: "no base", numbers: [percent], message };
}

function judgeCount(count: WrittenNumber, claim: Claim, rows: Rows, after: string): Judged {
  const numbers = [count];
  const isShown = shownCount(count, claim, rows.fitting);
  if (claim.counts === null && isOfTheProgram(after)) return notChecked(numbers);
  const held = heldCount(count, claim, rows);
  if (held) return { kind: "leak", rule: "held back", numbers, message: heldMessage(held) };
  if (isShown) return agrees(numbers, placeIn(isShown, count.value));
  if (isSmall(count, claim, rows)) return small(count, rows);
  const message = "no table of the release shows it: correct it, or say where it comes from.";
  return { kind: "mend", rule: "no table", numbers, message };
}

/**
 * The rows whose held back counts a number can give away although a row of the release shows it: those of the same table,
 * and of another table what the sentence speaks of, by a name that the row has and the shown one has not, or in words.
 */
function spokenOf(rows: Rows, shown: TextRow): Rows {
  const isMeant = ({ table, names }: TextRow) =>
    table === shown.table ||
    TABLE_WORDS[table].test(rows.sentence) ||
    [...rows.named].some((key) => names.has(key) && !shown.names.has(key));
  return { ...rows, fitting: rows.fitting.filter(isMeant) };
}

/** Words by which a sentence speaks of what a table counts, beside the names of its rows. */
const TABLE_WORDS: Readonly<Record<ReleasableId, RegExp>> = {
  "met-by-band": /\b(?:check|met\b|age group|by age)/,
  "met-by-band-left": /\b(?:left|leaving|last day)\b/,
  "reached-by-age": /\bby (?:the age of )?\d+ months|\bever in the program\b/,
  "age-when-met": /\b(?:half|quarters?) of\b|\bnine in ten\b|\bestimate/,
  referrals: /\breferr/,
  "referral-steps": /\b(?:evaluat|eligib|plans?\b|received|45 days)/,
  ratings: /\b(?:rating|rated|outcome|entry|exit|level of their age|grew faster|summary statement)/,
  trend: /\b(?:quarter by quarter|trend|at the end of|last year)\b/,
};

/** Numbers that every application has and no table of ours: sites, staff, hours, money. */
function isOfTheProgram(after: string): boolean {
  return /^[\s-]*(?:[a-z]+\s+)?(?:sites?|areas?|skills?|staff|therapists?|specialists?|count(?:y|ies)|towns?|visits?|quarters?|hours?|dollars?|pages?|counties|partners?|clinics?|workshops?|times|steps?)\b/i.test(
    after,
  );
}

function notChecked(numbers: readonly WrittenNumber[]): Judged {
  const message = "the tool cannot check this number: it counts neither children nor referrals.";
  return { kind: "advice", rule: "not checked", numbers, message };
}

function judgeOther(number: WrittenNumber, rows: Rows): Judged[] {
  const numbers = [number];
  const same = (figure: Figure) => isSameOther(number, figure);
  const isShown = rows.fitting.find(({ shown }) => shown.some(same));
  if (isShown) return [agrees(numbers, isShown.shown.find(same)!.place)];
  const held = number.decimals === 0 ? undefined : rows.fitting.flatMap(({ hidden }) => hidden).find(same);
  if (held) return [{ kind: "leak", rule: "held back", numbers, message: heldMessage(held) }];
  if (number.kind === "age" && number.decimals === 0) return [];
  const message = "no table of the release shows it: correct it, or say where it comes from.";
  return [{ kind: "mend", rule: "no table", numbers, message }];
}

function isSameOther(number: WrittenNumber, figure: Figure): boolean {
  if (number.kind === "age") return figure.kind === "months" && isNear(number, figure.value);
  if (figure.kind === "share") return isNear(number, figure.value / 100);
  return figure.kind !== "count" && isNear(number, figure.value);
}

function heldCount(number: WrittenNumber, claim: Claim, rows: Rows): Figure | undefined {
  const shown = shownCount(number, claim, rows.fitting) ?? shownCount(number, claim, rows.all);
  return (shown ? spokenOf(rows, shown) : rows).fitting
    .flatMap(({ hidden }) => hidden)
    .find((each) => each.value > 0 && isCount(each, number, claim));
}

function shownCount(number: WrittenNumber, claim: Claim, rows: readonly TextRow[]): TextRow | undefined {
  return rows.find(({ shown }) => shown.some((each) => isCount(each, number, claim)));
}

function isCount(figure: Figure, { value }: WrittenNumber, { counts }: Claim): boolean {
  return figure.kind === "count" && figure.value === value && isOfSameKind(figure, counts);
}

function heldShare(number: WrittenNumber, { fitting }: Rows): Figure | undefined {
  return fitting.flatMap(({ hidden }) => hidden).find((each) => each.kind === "share" && isNear(number, each.value));
}

function isSmall({ kind, value }: WrittenNumber, { counts }: Claim, { minimumCell }: Rows): boolean {
  return kind === "count" && counts !== null && value >= 1 && value < minimumCell;
}

function small(number: WrittenNumber, { minimumCell }: Rows): Judged {
  const message = `a count of 1 to ${minimumCell - 1} may not leave under this rule: take it out, or write "fewer than ${minimumCell}" where the table shows as much.`;
  return { kind: "leak", rule: "small count", numbers: [number], message };
}

function heldMessage({ place }: Figure): string {
  return `it equals what ${place} holds back: take it out, or write about a figure that is shown.`;
}

function agrees(numbers: readonly WrittenNumber[], place: string): Judged {
  return { kind: "agrees", rule: "agrees", numbers, message: `the release shows it in ${place}.` };
}

function placeIn({ shown }: TextRow, value: number): string {
  return (shown.find((each) => each.value === value) ?? shown[0])?.place ?? "the release";
}

/** Equal at the decimals written. */
function isNear({ value, decimals }: WrittenNumber, figure: number): boolean {
  return Math.abs(figure - value) <= 0.5 * 10 ** -decimals + 1e-9;
}
