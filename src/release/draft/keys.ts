import type { Day } from "../../age/day";
import { isoOf } from "../../age/day";

/** What a count is of. The same count has the same key in every table and every release. */
export interface KeyParts {
  /** `followed`, `left`, `ever followed`, `referred` and their kind. */
  readonly population: string;
  readonly when: string;
  /** Group columns with values; "" for everybody. */
  readonly group: string;
  /** Skill, area or source; "" where it is of children alone. */
  readonly subject: string;
  /** Ages, as `spanText` writes them. */
  readonly ages: string;
  readonly column: string;
  /** Settings that are not the usual ones and change what is counted. */
  readonly tag?: string;
}

const FIELDS = ["population", "when", "group", "subject", "ages", "column", "tag"] as const;

/** Canonical text; parts are kept apart whatever a heading or an id is made of. */
export function keyOf(parts: KeyParts): string {
  const fields = FIELDS.map((field) => escaped(parts[field] ?? "", "|"));
  return (parts.tag ? fields : fields.slice(0, -1)).join("|");
}

export function partsOfKey(key: string): KeyParts {
  const fields = key.includes("\\") ? unescapedFields(key) : key.split("|");
  return Object.fromEntries(FIELDS.map((field, at) => [field, fields[at] ?? ""])) as unknown as KeyParts;
}

function unescapedFields(key: string): string[] {
  const fields = [""];
  for (const [token, kept] of key.matchAll(/\\(.)|[^]/gs)) {
    if (token === "|") fields.push("");
    else fields[fields.length - 1] += kept ?? token;
  }
  return fields;
}

/** `Site=North;Therapist=T1`, the columns in the order of their code units. */
export function groupText(pairs: readonly (readonly [heading: string, value: string])[]): string {
  return [...pairs]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([heading, value]) => `${escaped(heading, "=;")}=${escaped(value, "=;")}`)
    .join(";");
}

/** From one end to the other, an open end left blank. Counts over neighbouring spans add up. */
export function spanText(from: number | string | null, to: number | string | null): string {
  return `${from ?? ""}..${to ?? ""}`;
}

export const ALL_AGES = spanText(null, null);

/** A moment of age: counts at two of them do not add up. */
export function atAge(months: number): string {
  return `at ${months}`;
}

/** The months of a band, by its index. */
export function bandSpan(band: number, edges: readonly number[]): string {
  return spanText(edges[band - 1] ?? null, edges[band] ?? null);
}

/** Of counts that add up over neighbouring periods. */
export function addingPeriod(from: Day, to: Day): string {
  return spanText(isoOf(from), isoOf(to));
}

/** Of counts of a period as they stood on its last day, which add up over periods that end on that day. */
export function periodTo(from: Day, asOf: Day): Pick<Required<KeyParts>, "when" | "tag"> {
  return { when: addingPeriod(from, asOf), tag: `as of ${isoOf(asOf)}` };
}

/** Of counts that do not: a child can be followed in two periods. */
export function wholePeriod(from: Day, to: Day): string {
  return `${isoOf(from)} to ${isoOf(to)}`;
}

function escaped(text: string, marks: string): string {
  return text.replace(/[\\|=;]/g, (mark) => (mark === "\\" || marks.includes(mark) ? `\\${mark}` : mark));
}
