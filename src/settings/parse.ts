import type { CorrectionRule } from "../age/correction";
import { calendarOf, type Day, dayOf } from "../age/day";
import type { DateSystem } from "../age/serial";
import { type SettingEntries, type SettingName, settingsSchema } from "./schema";
import type { Settings } from "./shape";
import { usualSettings } from "./usual";

export type ParsedSettings = { readonly settings: Settings } | { readonly messages: readonly string[] };

/** The names of all settings, as they are written on every surface. */
export const SETTING_NAMES: readonly SettingName[] = Object.keys(settingsSchema(1900).shape) as SettingName[];

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
  const settings = settingsOf(parsed.data);
  const together = contradictions(settings);
  return together.length > 0 ? { messages: together } : { settings };
}

/** The first day of the calendar quarter that a day lies in. */
export function firstDayOfQuarter(day: Day): Day {
  const { year, month } = calendarOf(day);
  return dayOf(year, month - ((month - 1) % 3), 1);
}

function settingsOf(entries: SettingEntries): Settings {
  const asOf = entries.asOf ?? null;
  const { correctBelow, correctUntil, recheck, from, ...rest } = entries;
  const given = Object.fromEntries(
    Object.entries(rest).filter(([, value]) => value !== undefined),
  ) as Partial<Settings>;
  return {
    ...usualSettings,
    ...given,
    asOf,
    from: from ?? (asOf === null ? null : firstDayOfQuarter(asOf)),
    correction: correctionOf(correctBelow, correctUntil),
    recheckDays: recheck ?? usualSettings.recheckDays,
  };
}

function correctionOf(below: number | undefined, until: SettingEntries["correctUntil"]): CorrectionRule {
  return { ...usualSettings.correction, ...(below === undefined ? {} : { belowDays: below }), ...until };
}

function contradictions(settings: Settings): string[] {
  const messages: string[] = [];
  if (settings.from !== null && settings.asOf !== null && settings.from > settings.asOf) {
    messages.push("from must be a date on or before asOf.");
  }
  if (settings.minimumCell < settings.floor) {
    messages.push(`minimumCell must be a whole number of children from ${settings.floor} (the floor) to 1000.`);
  }
  return messages;
}

function unknownSetting(name: string): string {
  const lower = name.toLowerCase();
  const near = SETTING_NAMES.find((each) => each.toLowerCase() === lower.replace(/[\s_-]/g, ""));
  const legal = near ? `; did you mean ${near}?` : `. The settings are ${SETTING_NAMES.join(", ")}.`;
  return `There is no setting called "${name}"${legal}`;
}
