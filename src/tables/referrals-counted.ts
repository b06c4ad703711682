import { bandIndex } from "../age/bands";
import { type AgeClock, ageMonthsOn } from "../age/correction";
import type { Day } from "../age/day";
import type { Cohort } from "../cohort/cohort";
import { NOT_FOLLOWED } from "../cohort/following";
import { monthOf } from "../cohort/person-time";
import type { Referrals } from "../records/records";
import { groupsBy } from "./groups";

/** A referral made on a day of the period on which its child was followed. */
export interface CountedReferral {
  /** Row of Referrals. */
  readonly row: number;
  readonly child: number;
  /** Row of Enrolments in force that day. */
  readonly enrolment: number;
  /** As `bandIndex` counts them, by corrected age that day. */
  readonly band: number;
  /** As `monthOf` counts them. */
  readonly month: number;
  readonly areas: readonly string[];
  /** "" where none is recorded. */
  readonly source: string;
}

export interface CountedReferrals {
  readonly counted: readonly CountedReferral[];
  /** Made in the period, on a day on which the child was not followed. */
  readonly notFollowed: number;
}

export function countedReferrals(
  cohort: Pick<Cohort, "clocks" | "following">,
  referrals: Referrals,
  [from, to]: readonly [from: Day, to: Day],
  edges: readonly number[],
): CountedReferrals {
  const rows = [...referrals.referred.keys()].filter((row) => {
    const day = referrals.referred[row] as number;
    return day >= from && day <= to;
  });
  const counted = rows.flatMap((row): CountedReferral[] => {
    const child = referrals.child[row] as number;
    const day = referrals.referred[row] as number;
    const enrolment = cohort.following.enrolmentOn(child, day);
    if (enrolment === NOT_FOLLOWED) return [];
    const band = bandIndex(ageMonthsOn(cohort.clocks[child] as AgeClock, day), edges);
    const [areas, source] = [referrals.areas[row] ?? [], referrals.from[row] ?? ""];
    return [{ row, child, enrolment, band, month: monthOf(day), areas, source }];
  });
  return { counted, notFollowed: rows.length - counted.length };
}

/** The sites of the program and the one of each enrolment. */
export interface Sites {
  readonly names: readonly string[];
  readonly ofEnrolment: Int32Array;
}

/** Null where Children has no column headed Site. */
export function sitesOf(cohort: Cohort): Sites | null {
  if (!cohort.enrolments.columns.some(({ heading }) => heading === "Site")) return null;
  const groups = groupsBy(cohort, ["Site"]);
  return { names: groups.values.map(([name]) => name ?? ""), ofEnrolment: groups.ofEnrolment };
}

/** Areas in the order of the Skills table, then those that only referrals name, by code unit. */
export function areasOf(cohort: Pick<Cohort, "skills">, counted: readonly CountedReferral[]): string[] {
  const named = counted.flatMap(({ areas }) => areas).sort((a, b) => (a < b ? -1 : 1));
  return [...new Set([...cohort.skills.map(({ area }) => area), ...named])];
}
