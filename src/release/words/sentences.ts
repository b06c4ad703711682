import type { ReleasableId } from "../../tables/table";
import { capital } from "../../words/numbers";
import type { ReleasedTable } from "../release-table";
import { isoInWords } from "./days";
import { readReleased, type ReleasedReader, type ReleasedRow } from "./read-released";
import { referralSentence } from "./referral-sentence";
import { type ShareKeys, shareWords } from "./share-words";
import type { WordsContext } from "./words-context";

/** A sentence that carries the figures of one row, and the row it is about. */
export interface RowSentence {
  readonly row: number;
  readonly text: string;
}

/**
 * One sentence a row, made of what is shown in it alone. A row whose figures are hidden has none: a sentence that says
 * "few" would say what the table does not.
 */
export function sentencesOf(table: ReleasedTable, context: WordsContext): RowSentence[] {
  const read = readReleased(table);
  const say = SAYING[table.id];
  return table.rows.flatMap((row, index) => {
    const text = say(read, row, context);
    const group = read.group(row);
    return text === null
      ? []
      : [{ row: index, text: asRounded(group === "" ? capital(text) : `${group}: ${text}`, context) }];
  });
}

/** Every sentence of a release: those of its rows, and those that answer what it was asked. */
export function saidIn({ tables }: { readonly tables: readonly ReleasedTable[] }, context: WordsContext): string[] {
  const answers = (context.answered ?? []).flatMap(({ figures }) => figures.flatMap(({ sentence }) => sentence ?? []));
  return [...tables.flatMap((table) => sentencesOf(table, context).map(({ text }) => text)), ...answers];
}

/** A sentence travels alone, and must say itself that its counts are not the true ones. */
export function asRounded(text: string, { rule: { method, base } }: WordsContext): string {
  if (method !== "round" || base === null) return text;
  return text.replace(/\.$/, ` (counts rounded to multiples of ${base}).`);
}

/**
 * The sentence of the row that counts most, for the head of a sheet or picture; null where no row has one. A row of 0% or
 * 100% leads only where there is no other: the first step of a referral says nothing.
 */
export function leadingSentence(
  table: ReleasedTable,
  context: WordsContext,
  said: readonly RowSentence[] = sentencesOf(table, context),
): string | null {
  const read = readReleased(table);
  const sized = said.map(({ row, text }) => ({ text, row: table.rows[row] ?? [] }));
  const partial = sized.filter(({ row }) => isPartial(read, row));
  const candidates = partial.length > 0 ? partial : sized;
  const sizeOf = (row: ReleasedRow) => Math.max(-1, ...SIZE_KEYS.flatMap((key) => read.number(row, key) ?? []));
  const most = Math.max(-1, ...candidates.map(({ row }) => sizeOf(row)));
  return candidates.find(({ row }) => sizeOf(row) === most)?.text ?? null;
}

function isPartial(read: ReleasedReader, row: ReleasedRow): boolean {
  const share = SHARE_KEYS.flatMap((key) => read.number(row, key) ?? [])[0];
  return share === undefined || (share > 0 && share !== 1 && share !== 100);
}

const SHARE_KEYS = ["shareMet", "share", "percent", "lowest"] as const;
const SIZE_KEYS = ["assessed", "children", "of"] as const;

type Say = (read: ReleasedReader, row: ReleasedRow, context: WordsContext) => string | null;

const SAYING: Readonly<Record<ReleasableId, Say>> = {
  "met-by-band": (read, row, context) => bandSentence(read, row, context, `on ${isoInWords(context.asOf)}`),
  "met-by-band-left": (read, row, context) =>
    bandSentence(
      read,
      row,
      context,
      `of children who left the program between ${isoInWords(context.from)} and ${isoInWords(context.asOf)}, on their last day`,
    ),
  "reached-by-age": reachedSentence,
  "age-when-met": ageSentence,
  referrals: referralSentence,
  "referral-steps": stepSentence,
  ratings: ratingSentence,
  trend: trendSentence,
};

const MET: ShareKeys = { count: "met", of: "assessed", share: "shareMet", lower: "lower", upper: "upper" };

function bandSentence(read: ReleasedReader, row: ReleasedRow, context: WordsContext, when: string): string | null {
  const words = shareWords(read, row, MET, context.level);
  if (words === null) return null;
  const { count, of, percent } = words;
  const band = read.text(row, "band");
  if (read.text(row, "skill") === ALL_SKILLS) {
    return `${when}, ${count} of ${of} up-to-date skill checks in ${read.text(row, "area")} at ${band} were met${percent}.`;
  }
  return `${when}, ${count} of ${of} children checked at ${band} had met "${skillIn(read, row, context)}"${percent}.`;
}

function reachedSentence(read: ReleasedReader, row: ReleasedRow, context: WordsContext): string | null {
  const keys = { count: "met", of: "children", share: "lowest" };
  const words = shareWords(read, row, keys, context.level);
  if (words === null) return null;
  const notKnown = read.count(row, "notKnown");
  const unknown = notKnown === null || notKnown === "0" ? "" : ` For ${notKnown} others it is not known.`;
  return `at least ${words.count} of ${words.of} children ever in the program had met "${skillIn(read, row, context)}" by ${read.text(row, "age")} months of age${words.percent}.${unknown}`;
}

function ageSentence(read: ReleasedReader, row: ReleasedRow, context: WordsContext): string | null {
  const children = read.count(row, "children");
  const ages = AGE_WORDS.flatMap(([key, words]) => {
    const months = read.number(row, key);
    return months === null ? [] : [{ words, months }];
  });
  const [first, ...others] = ages;
  if (children === null || first === undefined) return null;
  const rest = others.map(({ words, months }) => `, ${words} by ${months}`).join("");
  return `of ${children} children checked for "${skillIn(read, row, context)}", by estimate ${first.words} had met it by ${first.months} months of age${rest}.`;
}

const AGE_WORDS: readonly (readonly [key: string, words: string])[] = [
  ["p10", "one in ten"],
  ["p25", "a quarter"],
  ["p50", "half"],
  ["p75", "three quarters"],
  ["p90", "nine in ten"],
];

const STEP: ShareKeys = { count: "count", of: "of", share: "share", lower: "lower", upper: "upper" };

function stepSentence(read: ReleasedReader, row: ReleasedRow, context: WordsContext): string | null {
  const words = shareWords(read, row, STEP, context.level);
  if (words === null) return null;
  const days = read.number(row, "medianDays");
  const median = days === null ? "" : ` Half took this step within ${days} days of receipt.`;
  const within = shareWords(read, row, { count: "within45", of: "of45", share: "" }, context.level);
  const in45 = within === null ? "" : ` Within 45 days: ${within.count} of the ${within.of} that can be judged.`;
  return `${read.text(row, "step")}: ${words.count} of ${words.of} referrals made between ${isoInWords(context.from)} and ${isoInWords(context.asOf)}${words.percent}.${median}${in45}`;
}

function ratingSentence(read: ReleasedReader, row: ReleasedRow, context: WordsContext): string | null {
  const keys = { count: "count", of: "of", share: "percent", percent: true };
  const words = shareWords(read, row, keys, context.level);
  if (words === null) return null;
  const statement = read.text(row, "statement");
  return `${read.text(row, "outcome")}: ${words.count} of ${words.of} children ${statementInWords(statement)}${words.percent}; summary statement ${statement}.`;
}

/** The two federal summary statements for early intervention (Part C), in a few plain words. */
function statementInWords(statement: string): string {
  return statement === "1"
    ? "who began below the level of their age grew faster than before"
    : "were at the level of their age at exit";
}

function trendSentence(read: ReleasedReader, row: ReleasedRow, context: WordsContext): string | null {
  const words = shareWords(read, row, MET, context.level);
  if (words === null) return null;
  const provisional =
    read.at(row, "provisional") === true ? " This quarter is provisional: entries are still to come." : "";
  return `at the end of ${read.text(row, "quarter")}, ${words.count} of ${words.of} children checked had met "${skillIn(read, row, context)}"${words.percent}.${provisional}`;
}

const ALL_SKILLS = "all";

function skillIn(read: ReleasedReader, row: ReleasedRow, { skills }: WordsContext): string {
  const id = read.text(row, "skill");
  return skills.find((skill) => skill.id === id)?.label || id;
}
