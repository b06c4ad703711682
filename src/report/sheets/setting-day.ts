import { dayFromIso } from "../../age/day";
import type { SettingName } from "../../settings/settings";
import { dayInWords } from "../../words/dates";
import type { SettingsEcho } from "../report";

/** The day of a setting, in words; null where it is not set. */
export function settingDay(settings: SettingsEcho, name: SettingName): string | null {
  const value = settings[name];
  const day = typeof value === "string" ? dayFromIso(value) : null;
  return day === null ? null : dayInWords(day);
}
