import { dayFromIso } from "../../age/day";
import { dayInWords } from "../../words/dates";

/** `September 30, 2026`. */
export function isoInWords(iso: string): string {
  const day = dayFromIso(iso);
  if (day === null) throw new RangeError("isoInWords: no ISO date");
  return dayInWords(day);
}
