import {
  parseSettings,
  SETTING_CATALOGUE,
  SETTING_NAMES,
  type SettingDeclaration,
  type SettingName,
  settingsThatBearOn,
  usualWritten,
} from "../../src/settings/settings";
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

/** The settings that stand somewhere of their own in the pane; the others are listed. */
export const AS_OF = fieldOf("asOf");
export const FROM = fieldOf("from");
export const EDGES = fieldOf("edges");
export const MINIMUM_CELL = fieldOf("minimumCell");
export const RELEASE_METHOD = fieldOf("releaseMethod");

const OF_RELEASE = settingsThatBearOn("release");

/** The rest of the quarter's, under the names that the command line and the worksheet functions use too. */
export const MORE_SETTINGS = SETTING_NAMES.filter(
  (name) => !OF_RELEASE.includes(name) && !["asOf", "from", "by"].includes(name),
).map(fieldOf);

export interface SettingGroup {
  readonly title: string;
  readonly fields: readonly FieldWords[];
}

const AGES: readonly SettingName[] = ["correctBelow", "correctUntil", "edges"];
const STATISTICS: readonly SettingName[] = ["level", "scanMonths", "seed"];

/** The same, by what a person looks for; what belongs nowhere else says how values are read. */
export const SETTING_GROUPS: readonly SettingGroup[] = [
  { title: "Period and ages", fields: MORE_SETTINGS.filter(({ name }) => AGES.includes(name)) },
  {
    title: "How values are read",
    fields: MORE_SETTINGS.filter(({ name }) => !AGES.includes(name) && !STATISTICS.includes(name)),
  },
  { title: "For statisticians", fields: MORE_SETTINGS.filter(({ name }) => STATISTICS.includes(name)) },
];

/** The rest of those that bear on a release alone. */
export const RELEASE_SETTINGS = OF_RELEASE.filter((name) => !["minimumCell", "releaseMethod"].includes(name)).map(
  fieldOf,
);

/** The place of the pane in which a setting stands. */
export function placeOfSetting(name: SettingName): "Release" | "Quarter" {
  return OF_RELEASE.includes(name) ? "Release" : "Quarter";
}

function fieldOf(name: SettingName): FieldWords {
  const { label, about, leftOut, choices, entry }: SettingDeclaration<unknown, unknown> = SETTING_CATALOGUE[name];
  const usual = usualWritten(name);
  const left = leftOut ?? (Array.isArray(usual) ? usual.join(", ") : String(usual));
  return {
    name,
    label,
    hint: choices || name === "asOf" ? about : `${about} Left empty: ${left}.`,
    ...(choices ? { choices } : {}),
    ...(entry.isDate ? { isDate: true } : {}),
  };
}

export const MISSING_AS_OF = "The report needs the day its figures are true for: fill in the as-of date.";
export const NO_TABLES = "No table is chosen: tick at least one.";

/** Why no report can be made: a field that stands in another place is named with its message. */
export function reportFaults(messages: ReadonlyMap<SettingName, string>): string {
  const elsewhere = [...messages].find(([name]) => placeOfSetting(name) === "Release");
  if (elsewhere === undefined) return "Some fields need checking before the report can be made.";
  return `A field of Release needs checking before the report can be made. ${elsewhere[1]}`;
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
  return `${SETTING_CATALOGUE[name].label}: ${message.slice(name.length + 1).replace(/\basOf\b/g, "the as-of date")}`;
}

function isBlank(value: string | readonly string[] | undefined): boolean {
  return value === undefined || value.length === 0;
}
