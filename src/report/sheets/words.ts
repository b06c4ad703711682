import { UTCDate } from "@date-fns/utc";
import { format } from "date-fns";
import { calendarOf, type Day, dayFromIso } from "../../age/day";
import type { SettingsEcho } from "../report";

/** `30 September 2026`, in whatever time zone. */
export function dayInWords(day: Day): string {
  const { year, month, dayOfMonth } = calendarOf(day);
  return format(new UTCDate(year, month - 1, dayOfMonth), "d MMMM yyyy");
}

/** The day of a setting, in words; null where it is not set. */
export function settingDay(settings: SettingsEcho, name: string): string | null {
  const value = settings[name];
  const day = typeof value === "string" ? dayFromIso(value) : null;
  return day === null ? null : dayInWords(day);
}

/** `12,345`. */
export function counted(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+(?!\d))/g, ",");
}

/** `1 child`, `12 children`. */
export function plural(count: number, one: string, many: string): string {
  return `${counted(count)} ${count === 1 ? one : many}`;
}

/** `62.4% (53 of 85)`: a percent never stands without its numbers. */
export function percentOf(count: number, of: number): string {
  return of === 0 ? `none (0 of 0)` : `${((100 * count) / of).toFixed(1)}% (${counted(count)} of ${counted(of)})`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
