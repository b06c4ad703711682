import { calendarOf, type Day, dayOf, isoOf } from "../../age/day";
import type { Settings } from "../../settings/settings";
import { TABLE_CATALOGUE } from "../../tables/catalogue";
import type { ReleasableId } from "../../tables/table";
import { dayInWords } from "../../words/dates";
import { listed, plural } from "../../words/numbers";

/** One way to ask the question: the settings, and what they change in words. */
export interface Attempt {
  readonly settings: Settings;
  readonly words: string;
  /** As the setting would be written on the command line; empty for the question as it was asked. */
  readonly options: string;
  /** The one thing that it changes; null where that is nothing, or several. */
  readonly change: "edges" | "from" | "by" | null;
}

/** The question as asked and what changes one thing in it, the nearest first; and the attempt that changes all of them most. */
export interface Attempts {
  readonly singles: readonly Attempt[];
  readonly widest: Attempt | null;
}

export function attemptsOf(tables: readonly ReleasableId[], settings: Settings): Attempts {
  const asked: Attempt = { settings, words: askedWords(tables, settings), options: "", change: null };
  const bands = tables.some((id) => BANDED.includes(id)) ? fewerBands(settings) : [];
  const periods = tables.every((id) => isOfOneDay(id)) ? [] : longerPeriods(settings);
  const groups = fewerGroups(settings);
  const widest = [bands.at(-1), periods.at(-1), groups.at(-1)].filter((each) => each !== undefined);
  return { singles: [asked, ...bands, ...periods, ...groups], widest: combined(settings, widest) };
}

function isOfOneDay(id: ReleasableId): boolean {
  return TABLE_CATALOGUE[id].when === "at a date";
}

const BANDED: readonly ReleasableId[] = ["met-by-band", "met-by-band-left", "reached-by-age"];

function askedWords(tables: readonly ReleasableId[], { from, asOf }: Settings): string {
  const day = dayInWords(asOf!);
  return tables.every((id) => isOfOneDay(id)) ? `as asked, ${day}` : `as asked, ${dayInWords(from!)} to ${day}`;
}

const LONGER_MONTHS = [6, 12, 24] as const;

function longerPeriods(settings: Settings): Attempt[] {
  return LONGER_MONTHS.flatMap((months) => {
    const from = monthsBefore(settings.asOf! + 1, months);
    if (from >= settings.from!) return [];
    const words = `for the ${months} months from ${dayInWords(from)}`;
    return [{ settings: { ...settings, from }, words, options: `--from ${isoOf(from)}`, change: "from" }];
  });
}

/** The first day of the month that many months before the month of this day. */
function monthsBefore(day: Day, months: number): Day {
  const { year, month } = calendarOf(day);
  const index = year * 12 + (month - 1) - months;
  return dayOf(Math.floor(index / 12), (index % 12) + 1, 1);
}

/** Every second edge goes, again and again; the first and the last stay. */
function fewerBands(settings: Settings): Attempt[] {
  const attempts: Attempt[] = [];
  for (let { edges } = settings; edges.length > 2;) {
    edges = edges.filter((_, at) => at % 2 === 0 || at === edges.length - 1);
    attempts.push({
      settings: { ...settings, edges },
      words: `with ${plural(edges.length - 1, "age group", "age groups")}, cut at ${listed(edges.map(String))} months`,
      options: `--edges ${edges.join(",")}`,
      change: "edges",
    });
  }
  return attempts;
}

/** The finest grouping goes first; the last attempt has none. */
function fewerGroups(settings: Settings): Attempt[] {
  const { by } = settings;
  return by.map((_, at): Attempt => {
    const left = by.slice(0, by.length - 1 - at);
    const gone = listed(by.slice(left.length));
    return {
      settings: { ...settings, by: left },
      words: left.length === 0 ? `without ${gone}, all together` : `without ${gone}`,
      options: left.length === 0 ? "no --by" : `--by ${left.join(",")}`,
      change: "by",
    };
  });
}

/** All these changes at once; null where there are fewer than two. */
export function combined(settings: Settings, parts: readonly Attempt[]): Attempt | null {
  if (parts.length < 2) return null;
  const changed = (change: Attempt["change"]) =>
    (parts.find((each) => each.change === change) ?? { settings }).settings;
  return {
    settings: { ...settings, edges: changed("edges").edges, from: changed("from").from, by: changed("by").by },
    words: parts.map(({ words }) => words).join("; "),
    options: parts.map(({ options }) => options).join(" "),
    change: null,
  };
}
