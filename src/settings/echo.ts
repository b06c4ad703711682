import { type PlainValue } from "./entries";
import { SETTING_CATALOGUE, SETTING_NAMES, type SettingName, type SettingValues } from "./catalogue";
import type { Settings } from "./shape";

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
