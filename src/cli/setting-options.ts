import { Option } from "commander";

/** The settings that the command line takes, under the names of the pane and the settings sheet, in kebab case. */
const SETTING_OPTIONS: readonly (readonly [name: string, value: string, help: string])[] = [
  ["asOf", "<date>", "the day the figures are true for, such as 2026-09-30"],
  ["from", "<date>", "first day of the period; the first day of the as-of date's quarter when left out"],
  ["enteredBy", "<date>", "leave out rows typed in after this day"],
  ["by", "<columns>", "columns of Children to group by, comma-separated, such as Site,Therapist"],
  ["edges", "<months>", "age-band edges in months, comma-separated (usual: 0,3,6,9,12,18,24,36)"],
  ["recheck", "<days>", "a look without the skill older than this is out of date (usual: 90)"],
  ["level", "<share>", "confidence level of intervals (usual: 0.95)"],
  ["correctBelow", "<weeks+days>", 'correct age for births before this gestation (usual: 37+0), or "never"'],
  ["correctUntil", "<months>", 'stop correcting at this age (usual: 24), "24 corrected", or "always"'],
  ["gestationDecimals", "<days|weeks>", "how a bare 28.3 is read where nothing in its column settles it"],
  ["metDates", "<seen|exact>", "whether dates in a wide sheet are the visit that saw the skill, or the day it was met"],
  ["monthFirst", "<yes|no>", "how text dates are read where nothing in their column settles it"],
  ["scanMonths", "<months>", "how many months the scan for referral clusters looks back (usual: 24)"],
  ["minimumCell", "<count>", "the least count that may leave the program (usual: 11)"],
  ["floor", "<count>", "the owner's least minimum cell: no release goes below it (usual: 5)"],
  ["releaseMethod", "<hide|round|ranges>", "how small counts are protected (usual: hide)"],
  ["wholeGroups", "<flag|hide>", "whether a release only lists 0% and 100% of a group, or hides them (usual: flag)"],
  ["seed", "<number>", "the seed of bootstrap limits (usual: 20240229)"],
];

/** Only a release uses these: other commands take them, so that one settings list serves all, and do not speak of them. */
const OF_RELEASES: ReadonlySet<string> = new Set(["minimumCell", "wholeGroups", "floor", "releaseMethod"]);

/** All settings, or those named. */
export function settingOptions(names?: readonly string[]): Option[] {
  return SETTING_OPTIONS.filter(([name]) => !names || names.includes(name)).map(([name, value, help]) =>
    new Option(`--${kebab(name)} ${value}`, help).hideHelp(!names && OF_RELEASES.has(name)),
  );
}

/** The settings among the options that were given, as text under their own names. */
export function settingsGiven(options: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const given = SETTING_OPTIONS.map(([name]) => [name, options[name]] as const).filter(
    ([, value]) => value !== undefined,
  );
  return Object.fromEntries(given);
}

function kebab(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
