import { type Day, dayFromIso } from "../../age/day";
import { addingPeriod, type KeyParts, keyOf, partsOfKey, spanText } from "../draft/keys";

/** Counts that add up over neighbouring spans, of ages or of days. */
export interface Axis {
  /** The part of a key that holds the span. */
  readonly field: "ages" | "when";
  /** Half-open; -Infinity and Infinity for open ends; null where the key holds no span that adds up. */
  readonly read: (parts: KeyParts) => Span | null;
  readonly write: (parts: KeyParts, span: Span) => string;
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Counts of one thing over several spans. */
export interface Family {
  readonly parts: KeyParts;
  readonly spans: Map<string, Standing>;
}

export interface Standing {
  readonly span: Span;
  readonly cell: number;
}

/** Populations whose ages are bands; over all ages they are counted under another name. */
const BY_BAND = ["followed", "left", "referred"];

export const AGES: Axis = {
  field: "ages",
  read: ({ population, ages, column }) => {
    const [from, to] = ends(ages) ?? [];
    const isAll = from === "" && to === "";
    const isBand = BY_BAND.includes(population) && !isAll && (population !== "referred" || column === "referrals");
    if (from === undefined || to === undefined || !(isBand || population === "ever followed")) return null;
    return { from: from === "" ? -Infinity : Number(from), to: to === "" ? Infinity : Number(to) };
  },
  write: (parts, { from, to }) => keyOf({ ...parts, ages: spanText(endOf(from), endOf(to)) }),
};

export const PERIODS: Axis = {
  field: "when",
  read: ({ when }) => {
    const [from = null, to = null] = (ends(when) ?? []).map(dayFromIso);
    return from === null || to === null ? null : { from, to: to + 1 };
  },
  write: (parts, { from, to }) => keyOf({ ...parts, when: addingPeriod(from as Day, (to - 1) as Day) }),
};

/** Everything of a key but its span. */
export function familyOf(axis: Axis, parts: KeyParts): string {
  return keyOf({ ...parts, [axis.field]: "~" });
}

export function spanOf(axis: Axis, key: string): { readonly parts: KeyParts; readonly span: Span } | null {
  if (!key.includes("..")) return null;
  const parts = partsOfKey(key);
  const span = axis.read(parts);
  return span === null ? null : { parts, span };
}

function ends(text: string): string[] | null {
  const both = text.split("..");
  return both.length === 2 ? both : null;
}

function endOf(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
