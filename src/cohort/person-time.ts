import { firstDayOfAge } from "../age/correction";
import { calendarOf, type Day, dayOf, isoOf } from "../age/day";
import type { Cohort } from "./cohort";
import { NOT_FOLLOWED } from "./following";

/** Stretches of days on which a child is followed under one enrolment, in one age band and one calendar month. */
export interface PersonTime {
  readonly child: Int32Array;
  /** Row of Enrolments in force. */
  readonly enrolment: Int32Array;
  /** As `bandIndex` counts them, by corrected age that day. */
  readonly band: Int32Array;
  /** Calendar months since year 0: year x 12 + (0 to 11). */
  readonly month: Int32Array;
  readonly days: Int32Array;
}

/**
 * The days on which each child is followed from `from` to `to`, both counted, cut where the child's own corrected age
 * crosses a band edge, where the month ends and where another enrolment comes into force: days are counted, never
 * taken from midpoints.
 *
 * @throws {RangeError} when `from` comes after `to`
 */
export function personTime(cohort: TimedCohort, from: Day, to: Day, edges: readonly number[]): PersonTime {
  if (from > to) throw new RangeError("personTime: the first day comes after the last");
  const rows: StretchRow[] = [];
  const months = monthStarts(from, to);
  cohort.clocks.forEach((clock, child) => {
    const edgeDays = edges.map((edge) => firstDayOfAge(clock, edge));
    const cuts = cutDays(from, to, [...months, ...edgeDays, ...cohort.following.changesOf(child)]);
    cuts.forEach((start, at) => {
      const enrolment = cohort.following.enrolmentOn(child, start);
      if (enrolment === NOT_FOLLOWED) return;
      const band = edgeDays.filter((edge) => edge <= start).length;
      rows.push({ child, enrolment, band, month: monthOf(start), days: (cuts[at + 1] ?? to + 1) - start });
    });
  });
  const column = (key: keyof StretchRow) => Int32Array.from(rows, (row) => row[key]);
  return {
    child: column("child"),
    enrolment: column("enrolment"),
    band: column("band"),
    month: column("month"),
    days: column("days"),
  };
}

export type TimedCohort = Pick<Cohort, "clocks" | "following">;

type StretchRow = { readonly [Key in keyof PersonTime]: number };

/** Calendar months since year 0, so that they can be counted: year x 12 + (0 to 11). */
export function monthOf(day: Day): number {
  const { year, month } = calendarOf(day);
  return year * 12 + month - 1;
}

/** `2026-04`. */
export function monthLabel(month: number): string {
  return isoOf(firstDayOfMonth(month)).slice(0, 7);
}

export function firstDayOfMonth(month: number): Day {
  return dayOf(Math.floor(month / 12), (month % 12) + 1, 1);
}

/** The quarter of a month, counted alike: year x 4 + (0 to 3). */
export function quarterOf(month: number): number {
  return Math.floor(month / 3);
}

/** `2026-Q2`. */
export function quarterLabel(quarter: number): string {
  return `${Math.floor(quarter / 4)}-Q${(quarter % 4) + 1}`;
}

function monthStarts(from: Day, to: Day): Day[] {
  const first = monthOf(from) + 1;
  return Array.from({ length: monthOf(to) - first + 1 }, (_, index) => firstDayOfMonth(first + index));
}

/** Where stretches begin: `from`, and every change after it up to `to`, once each, in order. */
function cutDays(from: Day, to: Day, changes: readonly Day[]): Day[] {
  const within = changes.filter((day) => day > from && day <= to);
  return [...new Set([from, ...within])].sort((a, b) => a - b);
}
