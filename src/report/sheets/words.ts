import { dayFromIso } from "../../age/day";
import { dayInWords } from "../../age/day-in-words";
import type { SettingName } from "../../settings/settings";
import { shareInWords } from "../../tables/words";
import type { SettingsEcho } from "../report";

export { dayInWords };
export { capital, counted, listed, plural } from "../../tables/words";

/** The day of a setting, in words; null where it is not set. */
export function settingDay(settings: SettingsEcho, name: SettingName): string | null {
  const value = settings[name];
  const day = typeof value === "string" ? dayFromIso(value) : null;
  return day === null ? null : dayInWords(day);
}

/** `62.4% (53 of 85)`, and `3 of 3` from a base under 20. */
export function percentOf(count: number, of: number): string {
  return of === 0 ? `none (0 of 0)` : shareInWords(count, of);
}

/** `March 2026`, from `2026-03`. */
export function monthInWords(label: string): string {
  const first = dayFromIso(`${label}-01`);
  return first === null ? label : dayInWords(first).replace(/^1 /, "");
}

/** `January to March 2026`, `November 2025 to January 2026`, `March 2026`. */
export function monthsInWords(first: string, last: string): string {
  if (first === last) return monthInWords(first);
  const sameYear = first.slice(0, 4) === last.slice(0, 4);
  return `${sameYear ? monthInWords(first).slice(0, -5) : monthInWords(first)} to ${monthInWords(last)}`;
}

/** `p 0.012`: three decimals hold what 999 replicates can tell. */
export function pInWords(p: number): string {
  return p < 0.001 ? "p below 0.001" : `p ${p.toFixed(3)}`;
}
