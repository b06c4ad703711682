import { findGroupColumn } from "../../records/children/groups";
import type { GroupColumn, Records } from "../../records/records";
import type { ReleasedTable } from "../../release/release-table";

/** Texts of the records that may stand in no file of a release, and the words for what each is. */
export interface PrivateTexts {
  /** Folded text to what it is. */
  readonly whole: ReadonlyMap<string, string>;
  /** Those that are no ordinary word or number, and are looked for within longer texts too. */
  readonly within: ReadonlyMap<string, string>;
  /** Their lengths, so that a search is a few look-ups a word. */
  readonly lengths: readonly number[];
}

/**
 * Every identifier, code and free text of the records: children, families, observers, therapists and further columns
 * unless the release is grouped by them, reasons, signs. A label that a table has to print (an area, a site, a source, the
 * release's own words) is none.
 *
 * A word such as "yes" or a bare number cannot be told from the release's own words and counts within a sentence: it is
 * looked for as a whole cell only.
 */
export function privateTextsOf(
  records: Records,
  by: readonly string[],
  tables: readonly ReleasedTable[] = [],
): PrivateTexts {
  const printed = printedLabels(records, by, tables);
  const whole = new Map<string, string>();
  for (const [kind, texts] of kindsOf(records, by)) {
    for (const text of texts) {
      const key = folded(text);
      if (key !== "" && !printed.has(key) && !whole.has(key)) whole.set(key, kind);
    }
  }
  // Identifiers come last and outweigh every label.
  for (const id of records.children.ids) if (!isBareNumber(id)) whole.set(folded(id), CHILD);
  const within = new Map([...whole].filter(([text]) => isDistinct(text)));
  return { whole, within, lengths: [...new Set([...within.keys()].map((text) => text.length))] };
}

/** What a text of an output holds of the records, in words; null where it holds nothing. */
export function privateIn(text: string, { whole, within, lengths }: PrivateTexts): string | null {
  const key = folded(text);
  const exact = whole.get(key);
  if (exact !== undefined) return exact;
  for (const { index } of key.matchAll(/(?<![\p{L}\p{N}])\S/gu)) {
    for (const length of lengths) {
      const kind = within.get(key.slice(index, index + length));
      if (kind !== undefined && !/^[\p{L}\p{N}]/u.test(key.slice(index + length))) return kind;
    }
  }
  return null;
}

const CHILD = "the identifier of a child";

function kindsOf(records: Records, by: readonly string[]): [kind: string, texts: readonly string[]][] {
  const { children, enrolments, observations, referrals, signs } = records;
  return [
    [CHILD, children.ids],
    ["the code of a family", children.family],
    ["the code of an observer", observations.observers],
    ...enrolments.columns
      .filter((column) => column.heading !== "Site" && !isPrintedGroup(column, enrolments.columns, by))
      .map((column): [string, readonly string[]] => [
        column.heading === "Therapist" ? "the code of a therapist" : "a text of a column of Children",
        column.values,
      ]),
    ["a free text of a referral", [...(referrals?.reason ?? []), ...(referrals?.to ?? [])]],
    ["a warning sign of a child", signs?.sign ?? []],
  ];
}

/** A column with a value of its own for most children names them, whatever it is called. */
function isPrintedGroup(column: GroupColumn, columns: readonly GroupColumn[], by: readonly string[]): boolean {
  if (!by.some((name) => findGroupColumn(columns, name) === column)) return false;
  return column.heading === "Therapist" || new Set(column.values).size <= Math.max(column.values.length / 2, 1);
}

/** Columns whose texts are the tool's own words. */
const OWN_WORDS: ReadonlySet<string> = new Set([
  "step",
  "dimension",
  "band",
  "quarter",
  "area",
  "skill",
  "provisional",
]);

/** Cells that the sheets of a release always have. */
const HEADINGS = [
  "Table",
  "Sentence",
  "Area",
  "Notes",
  "Footnote",
  "Sentences",
  "Published ages",
  "Skill, age and source",
];

function printedLabels(records: Records, by: readonly string[], tables: readonly ReleasedTable[]): Set<string> {
  const { skills, enrolments, referrals, ratings } = records;
  const groups = enrolments.columns.filter(
    (column) => column.heading === "Site" || isPrintedGroup(column, enrolments.columns, by),
  );
  const own = tables.flatMap(({ columns, rows }) => [
    ...columns.flatMap(({ key, label }) => [key, label]),
    ...columns.flatMap(({ key }, at) => (OWN_WORDS.has(key) ? rows.map((row) => String(row[at] ?? "")) : [])),
  ]);
  const texts = [
    ...skills.flatMap(({ id, label, area, basis }) => [id, label, area, basis]),
    ...groups.flatMap(({ values }) => values),
    ...(referrals?.from ?? []),
    ...(referrals?.areas ?? []).flat(),
    ...(ratings?.outcome ?? []),
    ...own,
    ...HEADINGS,
  ];
  return new Set(texts.map(folded));
}

/** Nobody would write it by chance: a code with digits, capitals within, or a text of some length. */
function isDistinct(text: string): boolean {
  return !isBareNumber(text) && (/\p{L}.*\d|\d.*\p{L}/u.test(text) || text.length >= LONG_TEXT || /\d\D+\d/.test(text));
}

const LONG_TEXT = 12;

function isBareNumber(text: string): boolean {
  return /^[\d.,\s-]*$/.test(text.trim());
}

function folded(text: string): string {
  return text.normalize("NFKC").trim().toLowerCase();
}
