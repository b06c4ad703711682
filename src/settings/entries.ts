import { type CorrectionRule, TERM_DAYS } from "../age/correction";
import { type Day, dayFromIso, isoOf } from "../age/day";
import { parseGestation } from "../age/gestation";
import { type DateSystem, dayFromSerial } from "../age/serial";

/** A cell of a settings sheet, an option of the command line or a field of the pane. */
type Entry = unknown;

/** A setting as it is written out: dates as ISO text. */
export type PlainValue = string | number | boolean | null | readonly (string | number)[];

/** One way of writing a setting down. */
export interface EntryKind<Value> {
  /** What is legal, to follow "must be". */
  readonly legal: string;
  /** What stands for the value in the help of the command line. */
  readonly option: string;
  /** Null is a refusal. */
  read(this: void, entry: Entry, system: DateSystem): Value | null;
  /** Reading it gives the value again. */
  write(this: void, value: Value): PlainValue;
  readonly isLeftOut: (entry: Entry) => boolean;
  readonly isDate?: true;
}

export const date: EntryKind<Day> = {
  legal: "a date such as 2026-09-30",
  option: "<date>",
  read: (entry, system) => {
    if (typeof entry === "number") return entry >= 1 ? dayFromSerial(entry, system) : null;
    return typeof entry === "string" ? dayFromIso(entry) : null;
  },
  write: isoOf,
  // some hosts hand an empty cell over as 0, and no date is 0
  isLeftOut: (entry) => isBlank(entry) || entry === 0,
  isDate: true,
};

export function whole(least: number, most: number, unit = ""): EntryKind<number> {
  return {
    legal: `a whole number${unit === "" ? "" : ` of ${unit}`} from ${least} to ${most}`,
    option: unit === "" ? "<number>" : `<${unit}>`,
    read: (entry) => {
      const number = within(entry, least, most);
      return number !== null && Number.isInteger(number) ? number : null;
    },
    write: (value) => value,
    isLeftOut: isBlank,
  };
}

/** The same, or `none`, which is Infinity. */
export function wholeOrNone(least: number, most: number, unit: string): EntryKind<number> {
  const number = whole(least, most, unit);
  return {
    ...number,
    legal: `${number.legal}, or none`,
    read: (entry, system) =>
      typeof entry === "string" && entry.toLowerCase() === "none" ? Infinity : number.read(entry, system),
    write: (value) => (value === Infinity ? "none" : value),
  };
}

export const share: EntryKind<number> = {
  legal: "a share from 0.5 to 0.999, such as 0.95",
  option: "<share>",
  read: (entry) => within(entry, 0.5, 0.999),
  write: (value) => value,
  isLeftOut: isBlank,
};

export function word<const Word extends string>(...words: readonly Word[]): EntryKind<Word> {
  return {
    legal: `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`,
    option: `<${words.join("|")}>`,
    read: (entry) => words.find((each) => each === String(entry).toLowerCase()) ?? null,
    write: (value) => value,
    isLeftOut: isBlank,
  };
}

export const yesNo: EntryKind<boolean> = {
  legal: "yes or no",
  option: "<yes|no>",
  read: (entry) => {
    if (typeof entry === "boolean") return entry;
    const key = String(entry).toLowerCase();
    if (["yes", "true", "1"].includes(key)) return true;
    return ["no", "false", "0"].includes(key) ? false : null;
  },
  write: (value) => value,
  isLeftOut: isBlank,
};

/** Days of gestation below which a child is corrected; 0 corrects nobody. */
export const gestationBelow: EntryKind<number> = {
  legal: 'a gestation from 20+0 to 40+0, such as 37+0, or "never"',
  option: "<weeks+days>",
  read: (entry) => {
    if (typeof entry === "string" && entry.toLowerCase() === "never") return 0;
    if (typeof entry !== "string" && typeof entry !== "number") return null;
    const gestation = parseGestation(entry, null);
    return gestation.kind === "days" && gestation.days <= TERM_DAYS ? gestation.days : null;
  },
  write: (days) => (days === 0 ? "never" : `${Math.floor(days / 7)}+${days % 7}`),
  isLeftOut: isBlank,
};

export const correctedUntil: EntryKind<Pick<CorrectionRule, "untilMonths" | "untilAge">> = {
  legal: 'months from 0 to 72, such as 24, months of corrected age such as "24 corrected", or "always"',
  option: "<months>",
  read: (entry) => {
    const match = /^(\S+?)\s*(?:months?)?\s*(corrected)?$/i.exec(String(entry));
    if (String(entry).toLowerCase() === "always") return { untilMonths: Infinity, untilAge: "chronological" };
    const untilMonths = within(match?.[1], 0, 72);
    return untilMonths === null ? null : { untilMonths, untilAge: match?.[2] ? "corrected" : "chronological" };
  },
  write: ({ untilMonths, untilAge }) => {
    if (untilMonths === Infinity) return "always";
    return untilAge === "corrected" ? `${untilMonths} corrected` : untilMonths;
  },
  isLeftOut: isBlank,
};

export const risingMonths: EntryKind<readonly number[]> = {
  legal: "two or more rising ages in months from 0 to 216, such as 0, 3, 6, 9, 12",
  option: "<months>",
  read: (entry) => {
    const items = Array.isArray(entry)
      ? entry.filter((each) => !isBlank(each))
      : String(entry)
          .split(/[,;]/)
          .map((each) => each.trim());
    const edges = items.map((each) => within(each, 0, 216));
    const rising = edges.every((edge, i) => edge !== null && (i === 0 || edge > (edges[i - 1] as number)));
    return rising && edges.length >= 2 ? (edges as number[]) : null;
  },
  write: (value) => value,
  isLeftOut: isBlank,
};

export const headings: EntryKind<readonly string[]> = {
  legal: "one or more headings of Children, such as Site",
  option: "<columns>",
  read: (entry) => {
    const items = Array.isArray(entry) ? entry : String(entry).split(",");
    const texts = items.map((each) => String(each ?? "").trim()).filter((each) => each !== "");
    return texts.length > 0 ? texts : null;
  },
  write: (value) => value,
  isLeftOut: isBlank,
};

function isBlank(entry: Entry): boolean {
  if (typeof entry === "string") return entry.trim() === "";
  return entry === undefined || entry === null || (Array.isArray(entry) && entry.length === 0);
}

function numberOf(entry: Entry): number | null {
  if (typeof entry === "number") return Number.isFinite(entry) ? entry : null;
  return typeof entry === "string" && /^[+-]?(\d+\.?\d*|\.\d+)$/.test(entry) ? Number(entry) : null;
}

function within(entry: Entry, least: number, most: number): number | null {
  const number = numberOf(entry);
  return number !== null && number >= least && number <= most ? number : null;
}
