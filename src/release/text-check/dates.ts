import { calendarOf, dayFromIso } from "../../age/day";
import { isoInWords } from "../words/days";

const MONTHS = [
  ...["january", "february", "march", "april", "may", "june"],
  ...["july", "august", "september", "october", "november", "december"],
];
const NAME =
  "jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?";
const SPAN = new RegExp(
  `\\b(?:between\\s+|from\\s+)?(${NAME})\\.?(?:\\s+(?:19|20)\\d{2})?\\s*(?:to|through|and|until|-|–)\\s*(${NAME})\\.?\\s+(?:19|20)\\d{2}\\b`,
  "gi",
);

/** Dates finer than the quarter. */
const FINE: readonly RegExp[] = [
  /(?<!\d)(?:19|20)\d{2}-(?:0[1-9]|1[0-2])(?:-\d{2})?(?!\d)/g,
  /(?<![\d.])\d{1,2}[./]\d{1,2}[./](?:19|20)?\d{2}(?!\d)/g,
  new RegExp(`\\b\\d{1,2}(?:st|nd|rd|th)?\\s+(?:of\\s+)?(?:${NAME})\\b(?:,?\\s+(?:19|20)\\d{2})?`, "gi"),
  new RegExp(`\\b(?:${NAME})\\.?\\s+\\d{1,2}(?:st|nd|rd|th)?\\b(?:,?\\s+(?:19|20)\\d{2})?`, "gi"),
  new RegExp(`\\b(?:${NAME})\\.?,?\\s+(?:19|20)\\d{2}\\b`, "gi"),
  new RegExp(
    `\\b(?:in|since|during|last|this|by)\\s+(?:early\\s+|late\\s+|mid-?)?(?:${NAME.replace("|may|", "|")})\\b`,
    "gi",
  ),
  /\b(?:last|this)\s+(?:week|month)|\byesterday\b|\bweek of\b/gi,
];

/** `At the end of September 2025` is a quarter. */
const QUARTER_END =
  /\b(?:at\s+)?the\s+end\s+of\s+(?:mar(?:ch)?|june?|sept?(?:ember)?|dec(?:ember)?)\.?,?\s+(?:19|20)\d{2}\b/gi;

/** The days that a release is for, ISO. */
export interface Days {
  readonly from: string;
  readonly asOf: string;
}

/** Where a text has a date finer than the quarter that is not one of the release's own days. */
export function fineDates(text: string, days: Days): { start: number; end: number }[] {
  const rest = ownDates(text, days);
  const found = FINE.flatMap((pattern) =>
    [...rest.matchAll(pattern)].map(({ index, 0: match }) => ({ start: index, end: index + match.length })),
  );
  const longest = found.sort((a, b) => a.start - b.start || b.end - a.end);
  return longest.filter(
    (each, at) => !longest.slice(0, at).some(({ start, end }) => start <= each.start && end >= each.end),
  );
}

/** True where a text says for when its figures are: the day, its month or its quarter. */
export function namesPeriod(text: string, { asOf }: Days): boolean {
  const { year, month } = calendarOf(dayOf(asOf));
  const quarter = Math.ceil(month / 3);
  const ordinal = ["first", "second", "third", "fourth"][quarter - 1] as string;
  const folded = text.toLowerCase();
  const mentions = [
    ...waysToWrite(asOf),
    `${MONTHS[month - 1]} ${year}`,
    ...[`${year}-q${quarter}`, `q${quarter} ${year}`, `q${quarter} of ${year}`],
    ...[`${ordinal} quarter of ${year}`, `${ordinal} quarter ${year}`],
  ];
  return mentions.some((each) => folded.includes(each.toLowerCase()));
}

/** The text with the release's own days and quarters put out, at the same length. */
function ownDates(text: string, days: Days): string {
  const blank = (match: string) => " ".repeat(match.length);
  const withoutSpans = text
    .replace(QUARTER_END, blank)
    .replace(SPAN, (match, first: string, last: string) =>
      isOwnSpan(monthOf(first), monthOf(last)) ? blank(match) : match,
    );
  const { year, month } = calendarOf(dayOf(days.asOf));
  const own = [days.from, days.asOf].flatMap(waysToWrite);
  const month_ = `${MONTHS[month - 1]} ${year}`;
  return [...own, month_]
    .sort((a, b) => b.length - a.length)
    .reduce(
      (rest, each) => rest.replace(new RegExp(`\\b${each.replace(/[./]/g, "\\$&")}\\b`, "gi"), blank),
      withoutSpans,
    );
}

/** Whole quarters: a span from the first month of one to the last of another. */
function isOwnSpan(first: number, last: number): boolean {
  return first % 3 === 0 && last % 3 === 2;
}

function monthOf(name: string): number {
  return MONTHS.findIndex((each) => each.startsWith(name.slice(0, 3).toLowerCase()));
}

function waysToWrite(iso: string): string[] {
  const { year, month, dayOfMonth } = calendarOf(dayOf(iso));
  const name = MONTHS[month - 1] as string;
  return [
    iso,
    isoInWords(iso),
    `${name} ${dayOfMonth}, ${year}`,
    `${dayOfMonth} ${name} ${year}`,
    `${name} ${dayOfMonth}`,
    `${month}/${dayOfMonth}/${year}`,
  ];
}

function dayOf(iso: string): number {
  const day = dayFromIso(iso);
  if (day === null) throw new RangeError("checkText: no ISO date");
  return day;
}
