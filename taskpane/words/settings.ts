import type { SettingName } from "../../src/settings/schema";
import { parseSettings, SETTING_NAMES } from "../../src/settings/settings";
import type { Entries } from "../state/pane-state";

export interface FieldWords {
  readonly name: SettingName;
  readonly label: string;
  /** What is taken when the field is left empty, and what the setting does. */
  readonly hint: string;
  /** Where only a few answers are legal: each with its words; the first is what an empty field means. */
  readonly choices?: readonly { readonly value: string; readonly label: string }[];
  readonly isDate?: true;
}

export const AS_OF: FieldWords = {
  name: "asOf",
  label: "As-of date",
  hint: "The day the figures are true for.",
  isDate: true,
};

export const FROM: FieldWords = {
  name: "from",
  label: "First day of the period",
  hint: "Left empty: the first day of the as-of date’s quarter.",
  isDate: true,
};

export const EDGES: FieldWords = {
  name: "edges",
  label: "Edges of the age bands",
  hint: "Months, rising. Left empty: 0, 3, 6, 9, 12, 18, 24, 36.",
};

/** The rest, under the names that the command line and the worksheet functions use too. */
export const MORE_SETTINGS: readonly FieldWords[] = [
  {
    name: "enteredBy",
    label: "Entered by",
    hint: "Leaves out rows typed in after this day. Left empty: no cut-off.",
    isDate: true,
  },
  {
    name: "correctBelow",
    label: "Correct ages of children born before",
    hint: "Weeks and days, or never. Left empty: 37+0.",
  },
  {
    name: "correctUntil",
    label: "Correct ages until",
    hint: "Months, such as 24, 36 corrected, or always. Left empty: 24.",
  },
  EDGES,
  { name: "recheck", label: "A look is out of date after", hint: "Days. Left empty: 90." },
  { name: "level", label: "Confidence level", hint: "A share such as 0.95, which is what is taken when left empty." },
  {
    name: "gestationDecimals",
    label: "A gestation such as 28.3 means",
    hint: "Only where the column itself proves nothing.",
    choices: [
      { value: "", label: "Not settled: such a child is not corrected" },
      { value: "days", label: "28 weeks and 3 days" },
      { value: "weeks", label: "28.3 weeks" },
    ],
  },
  {
    name: "metDates",
    label: "A date on a wide sheet is",
    hint: "For sheets with a column for each skill.",
    choices: [
      { value: "", label: "The visit that saw the skill" },
      { value: "exact", label: "The day the skill was met" },
    ],
  },
  {
    name: "monthFirst",
    label: "Text dates begin with",
    hint: "Only where a column of text dates proves nothing.",
    choices: [
      { value: "", label: "Not settled: such a column is not read" },
      { value: "no", label: "The day" },
      { value: "yes", label: "The month" },
    ],
  },
  { name: "scanMonths", label: "Months scanned for clusters", hint: "Left empty: 24." },
  {
    name: "seed",
    label: "Seed of the random numbers",
    hint: "The same seed gives the same limits. Left empty: 20240229.",
  },
];

/** Those that bear on a release alone. */
export const MINIMUM_CELL: FieldWords = {
  name: "minimumCell",
  label: "Least number of children",
  hint: "Left empty: 11.",
};

export const RELEASE_METHOD: FieldWords = {
  name: "releaseMethod",
  label: "What is done with counts that may not be shown",
  hint: "Each way is attacked afterwards, as an outsider would.",
  choices: [
    { value: "", label: "Hidden, with as few others as make them safe" },
    { value: "round", label: "All counts rounded, so that they still add up" },
    { value: "ranges", label: "Given as ranges" },
  ],
};

export const RELEASE_SETTINGS: readonly FieldWords[] = [
  {
    name: "wholeGroups",
    label: "Where all or none of a group have something",
    hint: "0% and 100% say of every child in the group what they say of the group.",
    choices: [
      { value: "", label: "Shown, and listed for you" },
      { value: "hide", label: "Held back" },
    ],
  },
  { name: "floor", label: "The floor of this program", hint: "No release goes below it. Left empty: 5." },
];

const OF_RELEASE = [MINIMUM_CELL, RELEASE_METHOD, ...RELEASE_SETTINGS];

/** The place of the pane in which a setting stands. */
export function placeOfSetting(name: SettingName): "Release" | "Quarter" {
  return OF_RELEASE.some((each) => each.name === name) ? "Release" : "Quarter";
}

export const MISSING_AS_OF = "The report needs the day its figures are true for: fill in the as-of date.";
export const NO_TABLES = "No table is chosen: tick at least one.";

/** Why no report can be made: a field that stands in another place is named with its message. */
export function reportFaults(messages: ReadonlyMap<SettingName, string>): string {
  const elsewhere = [...messages].find(([name]) => placeOfSetting(name) === "Release");
  if (elsewhere === undefined) return "Some fields need a look before the report can be made.";
  return `A field of Release needs a look before the report can be made. ${elsewhere[1]}`;
}

/** What is wrong with each field, in words that name it as the pane does. */
export function fieldMessages(entries: Entries): ReadonlyMap<SettingName, string> {
  const parsed = parseSettings(entries, 1900);
  const found = new Map<SettingName, string>();
  for (const message of "messages" in parsed ? parsed.messages : []) {
    const name = SETTING_NAMES.find((each) => message.startsWith(`${each} `));
    if (name) found.set(name, inWordsOfThePane(message, name));
  }
  if (isBlank(entries.asOf) && !found.has("asOf")) found.set("asOf", MISSING_AS_OF);
  return found;
}

function inWordsOfThePane(message: string, name: SettingName): string {
  const label = [AS_OF, FROM, ...MORE_SETTINGS, ...OF_RELEASE].find((each) => each.name === name)?.label ?? name;
  return `${label}: ${message.slice(name.length + 1).replace(/\basOf\b/g, "the as-of date")}`;
}

function isBlank(value: string | readonly string[] | undefined): boolean {
  return value === undefined || value.length === 0;
}
