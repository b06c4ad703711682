import { z } from "zod";
import { calendarOf, type Day, dayOf } from "../age/day";
import type { DateSystem } from "../age/serial";
import { SETTING_CATALOGUE, SETTING_NAMES, type SettingName, type SettingValues } from "./catalogue";
import { type Settings, settingsOf } from "./shape";
import type { PlainValue } from "./entries";

export {
  type Bearing,
  SETTING_CATALOGUE,
  SETTING_NAMES,
  type SettingDeclaration,
  type SettingName,
  settingsThatBearOn,
} from "./catalogue";
export { type Settings, usualSettings } from "./shape";

/** Plain values under the settings' own names. */
export type SettingsEcho = Readonly<Record<SettingName, PlainValue>>;

/** Every setting as it would be written: dates as ISO text, `correctBelow` as "37+0". Parsing the echo gives the settings again. */
export function echoSettings(settings: Settings): SettingsEcho {
  const { correction, recheckDays, ...rest } = settings;
  const values: SettingValues = {
    ...rest,
    correctBelow: correction.belowDays,
    correctUntil: correction,
    recheck: recheckDays,
  };
  return Object.fromEntries(SETTING_NAMES.map((name) => [name, written(name, values[name])])) as SettingsEcho;
}

/** The usual value of a setting as it would be written; null where it has none. */
export function usualWritten(name: SettingName): PlainValue {
  return written(name, SETTING_CATALOGUE[name].usual);
}

function written(name: SettingName, value: SettingValues[SettingName]): PlainValue {
  return value === null ? null : SETTING_CATALOGUE[name].entry.write(value as never);
}

export type ParsedSettings = { readonly settings: Settings } | { readonly messages: readonly string[] };

/**
 * The settings that entries stand for: text, numbers, ISO dates or serial numbers under the settings' own names; what is
 * left out is as usual. Entries that are out of range give one sentence each instead.
 */
export function parseSettings(entries: Readonly<Record<string, unknown>>, system: DateSystem): ParsedSettings {
  const unknown = Object.keys(entries).filter((name) => !SETTING_NAMES.some((each) => each === name));
  const named = Object.fromEntries(SETTING_NAMES.map((name) => [name, entries[name]]));
  const parsed = settingsSchema(system).safeParse(named);
  const messages = unknown.map(unknownSetting).concat((parsed.error?.issues ?? []).map((issue) => issue.message));
  if (!parsed.success || messages.length > 0) return { messages };
  const settings = withPeriod(settingsOf(parsed.data as SettingValues));
  const together = contradictions(settings);
  return together.length > 0 ? { messages: together } : { settings };
}

/** The first day of the calendar quarter that a day lies in. */
export function firstDayOfQuarter(day: Day): Day {
  const { year, month } = calendarOf(day);
  return dayOf(year, month - ((month - 1) % 3), 1);
}

/** Each setting takes text, numbers or lists, and refuses with one sentence that names it and what is legal. */
function settingsSchema(system: DateSystem) {
  return z.strictObject(Object.fromEntries(SETTING_NAMES.map((name) => [name, entrySchema(name, system)])));
}

function entrySchema(name: SettingName, system: DateSystem) {
  const { entry, usual } = SETTING_CATALOGUE[name];
  return z.unknown().transform((given, context): unknown => {
    if (entry.isLeftOut(given)) return usual;
    const value = entry.read(typeof given === "string" ? given.normalize("NFKC").trim() : given, system);
    if (value !== null) return value;
    context.addIssue({ code: "custom", message: `${name} must be ${entry.legal}.` });
    return z.NEVER;
  });
}

/** Without a first day, the period is the quarter of the as-of date up to that day. */
function withPeriod(settings: Settings): Settings {
  const { from, asOf } = settings;
  return { ...settings, from: from ?? (asOf === null ? null : firstDayOfQuarter(asOf)) };
}

function contradictions(settings: Settings): string[] {
  const messages: string[] = [];
  if (settings.from !== null && settings.asOf !== null && settings.from > settings.asOf) {
    messages.push("from must be a date on or before asOf.");
  }
  if (settings.minimumCell < settings.floor) {
    messages.push(`minimumCell must be a whole number of children from ${settings.floor} (the floor) to 1000.`);
  }
  if (settings.peerLevel > settings.ratingLevels) {
    messages.push(
      `peerLevel must be a whole number from 2 to ${settings.ratingLevels}, the number of levels (ratingLevels).`,
    );
  }
  return messages;
}

function unknownSetting(name: string): string {
  const lower = name.toLowerCase();
  const near = SETTING_NAMES.find((each) => each.toLowerCase() === lower.replace(/[\s_-]/g, ""));
  const legal = near ? `; did you mean ${near}?` : `. The settings are ${SETTING_NAMES.join(", ")}.`;
  return `There is no setting called "${name}"${legal}`;
}
