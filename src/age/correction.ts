import type { Day } from "./day";
import { decimalMonths, firstDayAtAge } from "./months";

/** Term: 40 weeks 0 days. */
export const TERM_DAYS = 280;

/** The shortest and longest gestation taken as a gestation: 20 weeks 0 days to 45 weeks 6 days. */
export const SHORTEST_GESTATION_DAYS = 140;
export const LONGEST_GESTATION_DAYS = 321;

/**
 * Who is corrected, and for how long.
 * Source: AAP Committee on Fetus and Newborn, Age terminology during the perinatal period, Pediatrics 2004;114:1362-1364.
 */
export interface CorrectionRule {
  /** A child is corrected when born before this gestation, days; 0 corrects nobody. Usual: 37 weeks 0 days = 259. */
  readonly belowDays: number;
  /** The age at which correcting stops, months; Infinity never stops. Usual: 24; the AAP allows up to 36. */
  readonly untilMonths: number;
  /** The age that `untilMonths` is read on. Usual: chronological. */
  readonly untilAge: "chronological" | "corrected";
}

export type AgeBasis = "corrected" | "chronological";

/** What is needed to tell a child's age on any day. `stops` is the first day with correction over (the birth day itself when never corrected). */
export interface AgeClock {
  readonly birth: Day;
  /** The birth date moved forward by the days missing to term; the birth date itself for a child that is not corrected. */
  readonly correctedBirth: Day;
  readonly stops: Day;
}

/** @param gestationDays - null where it is not recorded, which counts as term */
export function ageClock(birth: Day, gestationDays: number | null, rule: CorrectionRule): AgeClock {
  if (gestationDays === null || gestationDays >= rule.belowDays || gestationDays >= TERM_DAYS) {
    return { birth, correctedBirth: birth, stops: birth };
  }
  const correctedBirth = birth + TERM_DAYS - gestationDays;
  const anchor = rule.untilAge === "corrected" ? correctedBirth : birth;
  return { birth, correctedBirth, stops: Math.max(birth, firstDayAtAge(anchor, rule.untilMonths)) };
}

/** The day that ages are counted from on a given day: the corrected birth date until correction stops, then the birth date. */
export function anchorOn(clock: AgeClock, on: Day, basis: AgeBasis = "corrected"): Day {
  return basis === "corrected" && on < clock.stops ? clock.correctedBirth : clock.birth;
}

/** Whole days of age by the rule in force that day; negative before the day the child was due. */
export function ageDaysOn(clock: AgeClock, on: Day, basis: AgeBasis = "corrected"): number {
  return on - anchorOn(clock, on, basis);
}

/** Decimal months of age by the rule in force that day. */
export function ageMonthsOn(clock: AgeClock, on: Day, basis: AgeBasis = "corrected"): number {
  return decimalMonths(anchorOn(clock, on, basis), on);
}

/** The first day on which the child's age is at least `months`. Age never falls: where correction stops it jumps up. */
export function firstDayOfAge(clock: AgeClock, months: number, basis: AgeBasis = "corrected"): Day {
  if (basis === "chronological" || clock.stops <= clock.birth) return firstDayAtAge(clock.birth, months);
  const corrected = firstDayAtAge(clock.correctedBirth, months);
  return corrected < clock.stops ? corrected : Math.max(clock.stops, firstDayAtAge(clock.birth, months));
}
