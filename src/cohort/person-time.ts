import { type AgeClock, firstDayOfAge } from "../age/correction";
import { calendarOf, type Day, dayOf } from "../age/day";
import type { Cohort } from "./cohort";
import { NOT_FOLLOWED } from "./following";

/** Stretches of days on which a child is followed under one enrolment, in one age band and one calendar quarter. */
export interface PersonTime {
  readonly child: Int32Array;
  /** Row of Enrolments in force. */
  readonly enrolment: Int32Array;
  /** As `bandIndex` counts them, by corrected age that day. */
  readonly band: Int32Array;
  /** Calendar quarters since year 0: year x 4 + (0 to 3). */
  readonly quarter: Int32Array;
  readonly days: Int32Array;
}

/**
 * The days on which each child is followed from `from` to `to`, both counted, cut where the child's own corrected age
 * crosses a band edge, where the quarter ends and where another enrolment comes into force: days are counted, never
 * taken from midpoints.
 */
export function personTime(cohort: Cohort, from: Day, to: Day, edges: readonly number[]): PersonTime {
  const child: number[] = [];
  const enrolment: number[] = [];
  const band: number[] = [];
  const quarter: number[] = [];
  const days: number[] = [];
  const quarters = quarterStarts(from, to);
  cohort.ids.forEach((_, index) => {
    const edgeDays = edges.map((edge) => firstDayOfAge(cohort.clocks[index] as AgeClock, edge));
    const cuts = cutDays(from, to, [...quarters, ...edgeDays, ...cohort.following.changesOf(index)]);
    cuts.forEach((start, at) => {
      const row = cohort.following.enrolmentOn(index, start);
      if (row === NOT_FOLLOWED) return;
      child.push(index);
      enrolment.push(row);
      band.push(edgeDays.filter((edge) => edge <= start).length);
      quarter.push(quarterOf(start));
      days.push((cuts[at + 1] ?? to + 1) - start);
    });
  });
  return {
    child: Int32Array.from(child),
    enrolment: Int32Array.from(enrolment),
    band: Int32Array.from(band),
    quarter: Int32Array.from(quarter),
    days: Int32Array.from(days),
  };
}

/** Calendar quarters since year 0, so that they can be counted: year x 4 + (0 to 3). */
export function quarterOf(day: Day): number {
  const { year, month } = calendarOf(day);
  return year * 4 + Math.floor((month - 1) / 3);
}

/** `2026-Q2`. */
export function quarterLabel(quarter: number): string {
  return `${Math.floor(quarter / 4)}-Q${(quarter % 4) + 1}`;
}

export function firstDayOf(quarter: number): Day {
  return dayOf(Math.floor(quarter / 4), (quarter % 4) * 3 + 1, 1);
}

function quarterStarts(from: Day, to: Day): Day[] {
  const first = quarterOf(from) + 1;
  return Array.from({ length: Math.max(0, quarterOf(to) - first + 1) }, (_, index) => firstDayOf(first + index));
}

/** Where stretches begin: `from`, and every change after it up to `to`, once each, in order. */
function cutDays(from: Day, to: Day, changes: readonly Day[]): Day[] {
  const within = changes.filter((day) => day > from && day <= to);
  return [...new Set([from, ...within])].sort((a, b) => a - b);
}
