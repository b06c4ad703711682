import { ageClock, anchorOn, type CorrectionRule } from "../../src/age/correction";
import type { Day } from "../../src/age/day";
import { addMonths, completedMonths, decimalMonths } from "../../src/age/months";
import { outOfRange } from "../failure";
import { type InCell, singleOf } from "./cells";
import { wordOf } from "./options";
import { dayFrom, numberFrom, wordFrom } from "./values";

export const AGE_UNITS = ["months", "completed", "weeks", "days", "text"] as const;
export type AgeUnit = (typeof AGE_UNITS)[number];

export function unitOf(argument: unknown): AgeUnit {
  return wordOf(argument, "unit", AGE_UNITS);
}

const BELOW_DAYS = 259;
const USUAL_UNTIL_MONTHS = 24;

/** Months at which correcting stops: 24 when left out; also "24 corrected" and "always", as the setting has it. */
export function correctionUntil(argument: unknown): CorrectionRule {
  const cell = singleOf(argument, "until");
  const words = /^(.*?)\s*(corrected)?$/.exec(wordFrom(cell ?? USUAL_UNTIL_MONTHS)) as RegExpExecArray;
  const untilAge = words[2] === undefined ? "chronological" : "corrected";
  if (words[1] === "always") return { belowDays: BELOW_DAYS, untilMonths: Infinity, untilAge: "chronological" };
  const untilMonths = numberFrom(words[1] as string, "until");
  if (untilMonths <= 0) throw outOfRange("until is a number of months over 0; leave it out for 24.");
  return { belowDays: BELOW_DAYS, untilMonths, untilAge };
}

/** The age on a day, counted from birth or, while the rule corrects, from the day the child was due. */
export function ageCell(
  birthCell: InCell,
  onCell: InCell,
  gestationDays: number | null,
  rule: CorrectionRule,
  unit: AgeUnit,
): number | string {
  const birth = dayFrom(birthCell, "birth");
  const on = dayFrom(onCell, "on");
  if (on < birth) throw outOfRange("on comes before birth: check both dates.");
  return inUnit(anchorOn(ageClock(birth, gestationDays, rule), on), on, unit);
}

/** For AGE, which corrects nobody. */
export const UNCORRECTED: CorrectionRule = { belowDays: 0, untilMonths: 0, untilAge: "chronological" };

function inUnit(anchor: Day, on: Day, unit: AgeUnit): number | string {
  if (unit === "months") return decimalMonths(anchor, on);
  if (unit === "completed") return completedMonths(anchor, on);
  if (unit === "text") return on < anchor ? `${inWords(on, anchor)} before due` : inWords(anchor, on);
  return unit === "weeks" ? (on - anchor) / 7 : on - anchor;
}

function inWords(from: Day, to: Day): string {
  const months = completedMonths(from, to);
  return `${counted(months, "month")} ${counted(to - addMonths(from, months), "day")}`;
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? "" : "s"}`;
}
