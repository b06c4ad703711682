import { dayFromIso } from "../../age/day";
import { dayInWords } from "../../age/day-in-words";
import { counted } from "../../tables/words";
import type { SettingsEcho } from "../report";

export { dayInWords };
export { capital, counted, listed, plural } from "../../tables/words";

/** The day of a setting, in words; null where it is not set. */
export function settingDay(settings: SettingsEcho, name: string): string | null {
  const value = settings[name];
  const day = typeof value === "string" ? dayFromIso(value) : null;
  return day === null ? null : dayInWords(day);
}

/** `62.4% (53 of 85)`: a percent never stands without its numbers. */
export function percentOf(count: number, of: number): string {
  return of === 0 ? `none (0 of 0)` : `${((100 * count) / of).toFixed(1)}% (${counted(count)} of ${counted(of)})`;
}
