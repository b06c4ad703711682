/** METHOD.md, section 3, word by word. */
import { addDays, addMonths, daysBetween } from "./calendar";
import type { OracleSettings } from "./input";

const TERM_DAYS = 280;

/** `completed` months and `part` days of a running month of `whole` days: kept apart so that comparisons are exact. */
export interface Months {
  readonly completed: number;
  readonly part: number;
  readonly whole: number;
}

export interface Born {
  readonly birth: string;
  readonly gestation: number | null;
}

export type Basis = "corrected" | "chronological" | null;

export function ageMonths(child: Born, basis: Basis, settings: OracleSettings, day: string): Months {
  return monthsFrom(addDays(child.birth, correctionDays(child, basis, settings, day)), day);
}

export function ageDays(child: Born, basis: Basis, settings: OracleSettings, day: string): number {
  return daysBetween(child.birth, day) - correctionDays(child, basis, settings, day);
}

/** Days by which the birth date is moved forward for an age asked for on this day. */
export function correctionDays(child: Born, basis: Basis, settings: OracleSettings, day: string): number {
  if (basis === "chronological" || child.gestation === null || child.gestation >= settings.belowDays) return 0;
  const shift = TERM_DAYS - child.gestation;
  const until = settings.untilMonths;
  if (until === "always") return shift;
  if (typeof until === "number") return isAtLeast(monthsFrom(child.birth, day), until) ? 0 : shift;
  const stop = Number(until.split(" ")[0]);
  return isAtLeast(monthsFrom(addDays(child.birth, shift), day), stop) ? 0 : shift;
}

const walked = new Map<string, Months>();

export function monthsFrom(anchor: string, day: string): Months {
  const key = `${anchor} ${day}`;
  const known = walked.get(key);
  if (known !== undefined) return known;
  let completed = 0;
  while (addMonths(anchor, completed + 1) <= day) completed += 1;
  while (addMonths(anchor, completed) > day) completed -= 1;
  const began = addMonths(anchor, completed);
  const months = {
    completed,
    part: daysBetween(began, day),
    whole: daysBetween(began, addMonths(anchor, completed + 1)),
  };
  walked.set(key, months);
  return months;
}

export function isAtLeast(age: Months, edge: number): boolean {
  return sideOf(age, edge) >= 0;
}

export function isAtMost(age: Months, edge: number): boolean {
  return sideOf(age, edge) <= 0;
}

export function decimal(age: Months): number {
  return age.completed + age.part / age.whole;
}

/** The sign of age less edge, in whole numbers: an edge such as 3.8 is 38 tenths, never the nearest binary number. */
function sideOf(age: Months, edge: number): number {
  const decimals = (String(edge).split(".")[1] ?? "").length;
  const scale = 10 ** decimals;
  return (age.completed * age.whole + age.part) * scale - Math.round(edge * scale) * age.whole;
}

/** The half-open band that holds an age, or the open one below or above. */
export function bandOf(age: Months, edges: readonly number[]): string {
  const first = edges[0] ?? 0;
  const last = edges[edges.length - 1] ?? 0;
  if (!isAtLeast(age, first)) return `before ${first} months`;
  if (isAtLeast(age, last)) return `${last} months and over`;
  for (let i = 0; i + 1 < edges.length; i += 1) {
    const [from, to] = [edges[i] ?? 0, edges[i + 1] ?? 0];
    if (isAtLeast(age, from) && !isAtLeast(age, to)) return `${from} to <${to} months`;
  }
  throw new RangeError("bandOf: edges do not rise");
}

export function bandsInOrder(edges: readonly number[]): string[] {
  const between = edges.slice(1).map((to, i) => `${edges[i] ?? 0} to <${to} months`);
  return [`before ${edges[0] ?? 0} months`, ...between, `${edges[edges.length - 1] ?? 0} months and over`];
}
