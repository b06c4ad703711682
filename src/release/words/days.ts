import { dayFromIso } from "../../age/day";
import { dayInWords } from "../../age/day-in-words";

/** `30 September 2026`. */
export function isoInWords(iso: string): string {
  const day = dayFromIso(iso);
  if (day === null) throw new RangeError("isoInWords: no ISO date");
  return dayInWords(day);
}
