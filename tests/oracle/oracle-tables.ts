/**
 * A second implementation of the tables, from METHOD.md alone: slow, obvious, a child at a time, and sharing no code
 * with the program. What both say is what the words say.
 */
import { ageIntervals, ageWhenMet, enrolmentIntervals, reachedByAge, sinceEnrollment } from "./ages-when-met";
import { agreement } from "./agreement";
import { enrolmentInForce, isEverFollowed, lastDayOfLeaver, latestEnrolment, peopleOf, type Person } from "./following";
import type { Entry } from "./groups";
import type { OracleInput, OracleRow } from "./input";
import { expectedByNow } from "./expected-by-now";
import { metByBand } from "./met-by-band";
import { skillStatus } from "./skill-status";

export const ORACLE_TABLES = [
  "expected-by-now",
  "met-by-band",
  "met-by-band-left",
  "reached-by-age",
  "age-when-met",
  "since-enrollment",
  "skill-status",
  "agreement",
  "age-intervals",
  "enrolment-intervals",
] as const;

export type OracleTableId = (typeof ORACLE_TABLES)[number];

/** `age-intervals` and `enrolment-intervals` are what the estimates of age-when-met and since-enrollment are made from. */
export function oracleTables(input: OracleInput): Record<OracleTableId, OracleRow[]> {
  const people = peopleOf(input);
  const followed = followedOn(people, input.settings.asOf);
  const ever = everFollowed(people, input.settings.asOf);
  return {
    "expected-by-now": expectedByNow(input, followed),
    "met-by-band": metByBand(input, followed),
    "met-by-band-left": metByBand(input, leavers(people, input)),
    "reached-by-age": reachedByAge(input, ever),
    "age-when-met": ageWhenMet(input, ever),
    "since-enrollment": sinceEnrollment(input, ever),
    "skill-status": skillStatus(input, followed),
    agreement: agreement(input, ever),
    "age-intervals": ageIntervals(input, ever),
    "enrolment-intervals": enrolmentIntervals(input, ever),
  };
}

function followedOn(people: readonly Person[], day: string): Entry[] {
  return people.flatMap((person) => {
    const enrolment = enrolmentInForce(person, day);
    return enrolment === null ? [] : [{ person, day, enrolment }];
  });
}

function leavers(people: readonly Person[], { settings }: OracleInput): Entry[] {
  return people.flatMap((person) => {
    const day = lastDayOfLeaver(person, settings.asOf, settings.from);
    const enrolment = day === null ? null : enrolmentInForce(person, day);
    return day === null || enrolment === null ? [] : [{ person, day, enrolment }];
  });
}

function everFollowed(people: readonly Person[], asOf: string): Entry[] {
  return people
    .filter((person) => isEverFollowed(person, asOf))
    .map((person) => ({ person, day: asOf, enrolment: latestEnrolment(person, asOf) }));
}
