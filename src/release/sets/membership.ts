import { type Day, dayFromIso } from "../../age/day";
import { Following, NOT_FOLLOWED } from "../../cohort/following";
import { NO_DAY } from "../../records/records";
import type { TableContext } from "../../tables/context";
import { servedDays, SIX_MONTHS_DAYS } from "../../tables/ratings-service";
import { ALL_AGES, type KeyParts } from "../draft/keys";
import { pairsOf } from "./places";

/** Something that is true of a child or not, by when it was in the program, and under which enrolment. */
export interface Membership {
  readonly name: string;
  /** The enrolment by which it is true; NOT_FOLLOWED where it is not. @param isIn - whether an enrolment belongs to the group */
  readonly is: (following: Following, child: number, isIn: (row: number) => boolean) => boolean;
  /** Days on which it may turn. */
  readonly turns: readonly Day[];
}

/** Children of a population over all ages, read off the key of their count; null where it is no such count. */
export function membershipOf({ population, when, subject, ages, column, tag = "" }: KeyParts): Membership | null {
  if (subject !== "" || ages !== ALL_AGES || column !== "children") return null;
  const on = dayFromIso(when);
  if (on !== null) return tag === "" ? onDay(population, on) : null;
  const [from = null, to = null] = when.split("..").map(dayFromIso);
  const end = dayFromIso(tag.replace(/^as of /, ""));
  return from === null || to === null || end === null || to > end ? null : ofPeriod(population, [from, to, end]);
}

/** True for everybody of a group who is followed on a day. */
export function followedOn(day: Day): Membership["is"] {
  return (following, child, isIn) => isOf(following.enrolmentOn(child, day), isIn);
}

export function everBy(day: Day): Membership["is"] {
  return (following, child, isIn) => isOf(following.latestEnrolmentBegunBy(child, day), isIn);
}

function onDay(population: string, day: Day): Membership | null {
  if (population === "followed") return { name: `followed ${day}`, is: followedOn(day), turns: [day] };
  return population === "ever followed" ? { name: `ever ${day}`, is: everBy(day), turns: [day] } : null;
}

/** Of the days from one to another, as they stood at the end of the period that began with the first. */
function ofPeriod(population: string, [from, to, end]: readonly [Day, Day, Day]): Membership | null {
  const name = `${population} ${from} ${to} ${end}`;
  const turns = [from, to, end];
  if (population === "left") return { name, turns, is: leftIn(from, to, end, () => true) };
  if (population === "left after six months") {
    const served = (following: Following, child: number, last: Day) =>
      servedDays(following, child, last) >= SIX_MONTHS_DAYS;
    return { name, turns: [...turns, ...turns.map((day) => day - SIX_MONTHS_DAYS)], is: leftIn(from, to, end, served) };
  }
  if (population !== "referred") return null;
  const within = followedWithin(from, end);
  const later = to < end ? followedWithin(to + 1, end) : () => false;
  return { name, turns, is: (...about) => within(...about) && !later(...about) };
}

function leftIn(
  from: Day,
  to: Day,
  end: Day,
  also: (following: Following, child: number, last: Day) => boolean,
): Membership["is"] {
  return (following, child, isIn) => {
    const last = following.lastDayIfLeft(child, from, end);
    return last !== null && last < to && isOf(following.enrolmentOn(child, last), isIn) && also(following, child, last);
  };
}

function followedWithin(from: Day, to: Day): Membership["is"] {
  return (following, child, isIn) =>
    [from, ...following.changesOf(child).filter((day) => day > from && day <= to)].some((day) =>
      isOf(following.enrolmentOn(child, day), isIn),
    );
}

function isOf(row: number, isIn: (row: number) => boolean): boolean {
  return row !== NOT_FOLLOWED && isIn(row);
}

/** Longer than any service that is asked about. */
const LONG_AGO = 10_000;

/**
 * Made-up children who enroll and leave on, before and after every day that matters, once each: which populations can go
 * together nobody writes down, these are asked.
 */
export function madeUp(days: readonly Day[]): { readonly following: Following; readonly size: number } {
  const near = [...new Set(days.flatMap((day) => [day - 1, day, day + 1, day + 2]))].sort((a, b) => a - b);
  const starts = [(near[0] ?? 0) - LONG_AGO, ...near];
  const pairs = starts.flatMap((enrolled) => [...near, NO_DAY].map((left) => [enrolled, left] as const));
  const column = (at: 0 | 1) => Int32Array.from(pairs, (pair) => pair[at]);
  const enrolments = { child: Int32Array.from(pairs.keys()), enrolled: column(0), left: column(1), columns: [] };
  return { following: new Following(enrolments, pairs.length), size: pairs.length };
}

/** Whether an enrolment has the values that the key of a group names; null where the records have no such column. */
export function enrolmentsOf(
  { cohort }: Pick<TableContext, "cohort">,
  group: string,
): ((row: number) => boolean) | null {
  if (group === "") return () => true;
  const pairs = pairsOf(group);
  const columns = pairs.map(([heading]) => cohort.enrolments.columns.find((column) => column.heading === heading));
  if (columns.includes(undefined)) return null;
  return (row) => pairs.every(([, value], at) => (columns[at]!.values[row] ?? "") === value);
}
