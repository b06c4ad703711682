import type { CorrectionRule } from "../age/correction";
import { SETTING_CATALOGUE, SETTING_NAMES, type SettingValues } from "./catalogue";

/** Every choice that changes a number, as the figures take it. Built by `parseSettings`. */
export interface Settings extends Omit<SettingValues, "correctBelow" | "correctUntil" | "recheck"> {
  readonly correction: CorrectionRule;
  /** A check without the skill that is older than this is out of date, days. */
  readonly recheckDays: number;
}

/** Every setting where nothing is said. `asOf` has no usual value: no figure depends on the day it is made. */
export const usualSettings: Settings = settingsOf(
  Object.fromEntries(SETTING_NAMES.map((name) => [name, SETTING_CATALOGUE[name].usual])) as SettingValues,
);

/** What is corrected, and until when, is one rule. */
export function settingsOf({ correctBelow, correctUntil, recheck, ...rest }: SettingValues): Settings {
  return { ...rest, correction: { belowDays: correctBelow, ...correctUntil }, recheckDays: recheck };
}
