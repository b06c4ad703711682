import { calendarOf, type Day, dayOf, isoOf } from "../../age/day";
import type { Settings } from "../../settings/settings";
import { TABLE_CATALOGUE } from "../../tables/catalogue";
import type { ReleasableId } from "../../tables/table";
import { dayInWords } from "../../words/dates";
import { listed } from "../../words/numbers";

/** One way to ask the question: the settings, and what they change in words. */
export interface Attempt {
  readonly settings: Settings;
  readonly words: string;
  /** As the setting would be written on the command line; empty for the question as it was asked. */
  readonly options: string;
}

/**
 * The question as asked, and then what may show more, the nearest first: longer periods, fewer age groups, no grouping.
 * One thing changes at a time; the last attempts change all of them.
 */
export function attemptsOf(table: ReleasableId, settings: Settings): Attempt[] {
  const asked: Attempt = { settings, words: askedWords(table, settings), options: "" };
  const periods = TABLE_CATALOGUE[table].when === "at a date" ? [] : longerPeriods(settings);
  const bands = BANDED.includes(table) ? fewerBands(settings) : [];
  const together = settings.by.length === 0 ? [] : [allTogether(settings)];
  const singles = [...bands, ...periods, ...together];
  const widest = [bands.at(-1), periods.at(-1), together.at(-1)].filter((each) => each !== undefined);
  return widest.length < 2 ? [asked, ...singles] : [asked, ...singles, combined(settings, widest)];
}

const BANDED: readonly ReleasableId[] = ["met-by-band", "met-by-band-left", "reached-by-age"];

function askedWords(table: ReleasableId, { from, asOf }: Settings): string {
  const day = dayInWords(asOf!);
  return TABLE_CATALOGUE[table].when === "at a date" ? `as asked, ${day}` : `as asked, ${dayInWords(from!)} to ${day}`;
}

const LONGER_MONTHS = [6, 12, 24] as const;

function longerPeriods(settings: Settings): Attempt[] {
  return LONGER_MONTHS.flatMap((months) => {
    const from = monthsBefore(settings.asOf! + 1, months);
    if (from >= settings.from!) return [];
    const words = `for the ${months} months from ${dayInWords(from)}`;
    return [{ settings: { ...settings, from }, words, options: `--from ${isoOf(from)}` }];
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
    const options = `--edges ${edges.join(",")}`;
    attempts.push({ settings: { ...settings, edges }, words: "with fewer age groups", options });
  }
  return attempts;
}

function allTogether(settings: Settings): Attempt {
  return {
    settings: { ...settings, by: [] },
    words: `without ${listed(settings.by)}, all together`,
    options: "no --by",
  };
}

function combined(settings: Settings, parts: readonly Attempt[]): Attempt {
  const [edges, from, by] = [
    parts.find((each) => each.settings.edges !== settings.edges)?.settings.edges ?? settings.edges,
    parts.find((each) => each.settings.from !== settings.from)?.settings.from ?? settings.from,
    parts.find((each) => each.settings.by !== settings.by)?.settings.by ?? settings.by,
  ];
  return {
    settings: { ...settings, edges, from, by },
    words: parts.map(({ words }) => words).join("; "),
    options: parts.map(({ options }) => options).join(" "),
  };
}
