import { dayFromIso } from "../../../age/day";
import { type DateSystem, serialOf } from "../../../age/serial";

/**
 * The serial number of a cell of type `d`: ISO 8601, a date with or without a time of day. Null where the text is no such
 * date or the date system cannot count it. Source: ECMA-376 Part 1, 18.18.11 (ST_CellType).
 */
export function serialFromIso(text: string, system: DateSystem): number | null {
  const match = /^(\d{4}-\d{2}-\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2})(\.\d+)?)?Z?)?$/.exec(text);
  const day = match === null ? null : dayFromIso(match[1] as string);
  if (match === null || day === null) return null;
  const [hours, minutes, seconds] = [match[2], match[3], match[4]].map((each) => Number(each ?? 0)) as Clock;
  if (hours > 23 || minutes > 59 || seconds > 59) return null;
  const serial = serialOf(day, system);
  if (serial < (system === 1904 ? 0 : 1)) return null;
  return serial + (hours * 3600 + minutes * 60 + seconds + Number(match[5] ?? 0)) / 86_400;
}

type Clock = [number, number, number];
