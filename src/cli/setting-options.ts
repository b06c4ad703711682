import { Option } from "commander";
import {
  SETTING_CATALOGUE,
  SETTING_NAMES,
  type SettingName,
  settingsThatBearOn,
  usualWritten,
} from "../settings/settings";

/**
 * The settings under the names of the pane and the settings sheet, in kebab case. Where none are named, all are taken, so
 * that one list of settings serves every command; those that only a release uses are then not spoken of.
 */
export function settingOptions(names?: readonly SettingName[]): Option[] {
  const ofReleases = settingsThatBearOn("release");
  return (names ?? SETTING_NAMES).map((name) =>
    new Option(`--${kebab(name)} ${SETTING_CATALOGUE[name].entry.option}`, helpOf(name)).hideHelp(
      !names && ofReleases.includes(name),
    ),
  );
}

/** The same for the earlier workbook of two, each under its name with "earlier-" before it; help shows the day alone. */
export function earlierSettingOptions(): Option[] {
  return SETTING_NAMES.map((name) =>
    new Option(`--earlier-${kebab(name)} ${SETTING_CATALOGUE[name].entry.option}`, EARLIER_DAY).hideHelp(
      name !== "asOf",
    ),
  );
}

const EARLIER_DAY =
  "The day of the earlier figures. Every other setting can be given for the earlier workbook alone in the same way, such as --earlier-recheck 60. When left out: as the later one; a REPORT.json brings its own.";

/** The settings of the earlier workbook among the options that were given. */
export function earlierSettingsGiven(options: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const own = SETTING_NAMES.map((name) => [name, options[`earlier${name.charAt(0).toUpperCase()}${name.slice(1)}`]]);
  return Object.fromEntries(own.filter(([, value]) => value !== undefined));
}

function helpOf(name: SettingName): string {
  const { about, leftOut }: { about: string; leftOut?: string } = SETTING_CATALOGUE[name];
  return `${about} When left out: ${leftOut ?? String(usualWritten(name))}.`;
}

/** The settings among the options that were given, as text under their own names. */
export function settingsGiven(options: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(
    SETTING_NAMES.flatMap((name) => (options[name] === undefined ? [] : [[name, options[name]]])),
  );
}

function kebab(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
