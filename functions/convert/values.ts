import { type Day, dayFromIso } from "../../src/age/day";
import { dayFromSerial } from "../../src/age/serial";
import { currentDateSystem } from "../date-system";
import { invalid, outOfRange } from "../failure";
import { type InCell, isBlank, isEmpty } from "./cells";

/** A day from a serial number or ISO text; an empty cell, or 0, is no date. */
export function dayFrom(cell: InCell, name: string): Day {
  if (isEmpty(cell)) throw invalid(`${name} is empty: give a date.`);
  const day = typeof cell === "number" ? dayFromSerial(cell, currentDateSystem()) : dayFromText(cell);
  if (day === null) throw invalid(`${name} is not a date: use a cell with a date, or text such as 2026-09-30.`);
  return day;
}

/** A number, also where a sheet holds its digits as text. 0 is the number 0. */
export function numberFrom(cell: InCell, name: string): number {
  if (isBlank(cell)) throw invalid(`${name} is empty: give a number.`);
  const number = typeof cell === "string" && /^\s*[+-]?\d+(\.\d+)?\s*$/.test(cell) ? Number(cell) : cell;
  if (typeof number !== "number") throw invalid(`${name} is not a number: type it with digits alone.`);
  return number;
}

/** Null for a blank cell; 0 is the number 0. */
export function numberOrBlank(cell: InCell, name: string): number | null {
  return isBlank(cell) ? null : numberFrom(cell, name);
}

/** A whole number of at least 0. 0 is a count. */
export function countFrom(cell: InCell, name: string): number {
  const count = numberFrom(cell, name);
  if (!Number.isInteger(count)) throw invalid(`${name} is a count: give a whole number.`);
  if (count < 0) throw outOfRange(`${name} is a count: it cannot be below 0.`);
  return count;
}

/** Compared as ids and words are everywhere: NFKC, without outer and zero-width spaces, case folded; a number equals its text. */
export function wordFrom(cell: InCell): string {
  const text = String(cell).normalize("NFKC");
  return text
    .replace(/[\u200b-\u200d\u2060\ufeff]/g, "")
    .trim()
    .toLowerCase();
}

function dayFromText(cell: InCell): Day | null {
  return typeof cell === "string" ? dayFromIso(cell.trim()) : null;
}
