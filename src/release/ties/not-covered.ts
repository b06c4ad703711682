import type { LedgerEntryBody } from "../ledger-entry";
import type { Combined } from "./combined";

/** The present release, as far as what ties it to earlier ones goes. */
export type PresentRelease = Pick<LedgerEntryBody, "asOf" | "from" | "tables" | "definition"> & {
  readonly minimumCell: number;
};

const AT_A_DATE = ["met-by-band", "met-by-band-left", "reached-by-age", "age-when-met", "trend"];
const OF_A_PERIOD = ["referrals", "met-by-band-left"];
const UP_TO_A_DATE = ["referral-steps", "ratings", "met-by-band-left"];

/** What an earlier release may give away together with this one and no equation ties, one sentence a kind. */
export function notCovered(combined: Combined, entries: readonly LedgerEntryBody[], now: PresentRelease): string[] {
  const others = (is: (entry: LedgerEntryBody) => boolean) => entries.filter(is);
  const shares = (kind: readonly string[]) => (entry: LedgerEntryBody) =>
    kind.some((id) => now.tables.includes(id)) && kind.some((id) => entry.tables.includes(id));
  const sentences: readonly (readonly [boolean, string])[] = [
    [
      others((entry) => entry.asOf !== now.asOf && shares(AT_A_DATE)(entry)).length > 0,
      "Between two as-of dates children join, leave, grow older and are checked again: what changed between an earlier release and this one can be read off both, and no equation ties them.",
    ],
    [
      others((entry) => (entry.asOf !== now.asOf || entry.from !== now.from) && shares(["referrals"])(entry)).length >
        0,
      "Children in the program or referred in two periods may be the same ones. In the table referrals, numbers of referrals are tied over all periods; children only over periods that end on the same day.",
    ],
    [
      others((entry) => isBesideReferrals(entry, now)).length > 0,
      "Referrals of several periods beside other tables of one day are tied in part only: children of one age group and period, less those of another table, can be a small number.",
    ],
    [
      others((entry) => cutsBoth(entry, now) && shares(OF_A_PERIOD)(entry)).length > 0,
      "An earlier release cut both ages and periods in another way: what lies between two age groups of one and an age group of the other is not tied.",
    ],
    [
      others((entry) => entry.asOf !== now.asOf && shares(UP_TO_A_DATE)(entry)).length > 0,
      "Between two as-of dates steps are taken, ratings are made and children come back: steps of referrals, ratings and children gone are tied over periods that end on the same day only.",
    ],
    [
      others(({ definition }) => countSettings(definition) !== countSettings(now.definition)).length > 0,
      "An earlier release counted with other settings: figures that these change are not tied.",
    ],
    [
      others(({ definition }) => crosses(definition, now.definition)).length > 0,
      "Groups by different columns are tied by their totals only: who knows which of their values go together, such as the therapists of a site, knows more.",
    ],
    [
      combined.changed > 0,
      "Records changed since an earlier release: where a figure is not what it was, the difference can be read off both, and what hangs together with it is not tied.",
    ],
    [
      combined.smallShown > 0,
      "An earlier release showed counts that are small by the threshold of this one: these are known, and cannot be taken back.",
    ],
    [
      others(({ rule }) => rule.method !== "hide").length > 0,
      "An earlier release was rounded or gave ranges: what its figures and these give away together is not tied.",
    ],
  ];
  return sentences.flatMap(([is, sentence]) => (is ? [sentence] : []));
}

/**
 * What tables of one release may give away together that is not tested.
 *
 * @param isFull - whether each count of a skill is a sum of the same unknowns
 */
export function notTestedInFull(isFull: boolean): string[] {
  return isFull ? [] : [IN_PART];
}

const IN_PART =
  "This program has many skills, so the figures of a skill are tested a few at a time: a figure, others that are a part of it, and what is left over. Many figures of one skill together may still give a small number of children away. Fewer age groups, or fewer tables at once, are tested in full.";

/** Two periods that end on one day, referrals of one of them, and another table in either. */
function isBesideReferrals({ asOf, from, tables }: LedgerEntryBody, now: PresentRelease): boolean {
  const all = [...tables, ...now.tables];
  return asOf === now.asOf && from !== now.from && all.includes("referrals") && all.some((id) => id !== "referrals");
}

const NOW_IN_PROGRAM: readonly string[] = ["met-by-band", "trend"];
const EVER_IN_PROGRAM: readonly string[] = ["reached-by-age", "age-when-met"];

/** What tables of one release may give away together where not all that ties them is tested. */
export function notCoveredWithin(tables: readonly string[]): string[] {
  const hasBoth = [NOW_IN_PROGRAM, EVER_IN_PROGRAM].every((kind) => kind.some((id) => tables.includes(id)));
  return hasBoth ? [BOTH_KINDS] : [];
}

const BOTH_KINDS =
  "Tables of children now in the program (met-by-band, trend) and of children ever in it (reached-by-age, age-when-met) are tested together in full only where the skills are few. The release says where they were not: then a figure of one less a figure of the other can be a small number of children. To be sure, let only one of these kinds leave for any one day.";

function cutsBoth(entry: LedgerEntryBody, now: PresentRelease): boolean {
  const isOtherPeriod = entry.asOf !== now.asOf || entry.from !== now.from;
  return isOtherPeriod && String(edgesIn(entry.definition)) !== String(edgesIn(now.definition));
}

/** Edges of the bands in a definition; null where they cannot be read. */
export function edgesIn(definition: string): readonly number[] | null {
  const value = jsonAfter("edges", definition);
  return Array.isArray(value) && value.every((each) => typeof each === "number") ? (value as number[]) : null;
}

function crosses(one: string, other: string): boolean {
  const [a, b] = [groupColumns(one), groupColumns(other)];
  return a.some((name) => !b.includes(name)) && b.some((name) => !a.includes(name));
}

/** Columns that a release is grouped by. */
export function groupColumns(definition: string): string[] {
  const value = jsonAfter("by", definition);
  return Array.isArray(value) ? value.map(String) : [];
}

/** The definition without what only says how counts are cut. */
function countSettings(definition: string): string {
  return definition.replace(/ (edges|by)=\[.*?\](?= |$)/g, "");
}

function jsonAfter(name: string, definition: string): unknown {
  const text = new RegExp(`(?:^| )${name}=(\\[.*?\\])(?= [A-Za-z]+=|$)`).exec(definition)?.[1];
  try {
    return text === undefined ? null : (JSON.parse(text) as unknown);
  } catch {
    return null;
  }
}
