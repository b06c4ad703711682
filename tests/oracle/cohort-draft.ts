/** What a random program is drawn as, before its dates are worked out: small numbers, so that failures shrink well. */
import * as fc from "fast-check";
import { addDays } from "./calendar";
import type { OracleSettings, Result, SkillRow } from "./input";

export interface CohortOptions {
  readonly maxChildren?: number;
  readonly maxSkills?: number;
  /**
   * Also rows that the method sheet only settles in passing: an observer who contradicts himself, two enrolments begun
   * on one day, an enrolment that ends the day it begins, a blank `Enrolled` among several, rows of one child in
   * conflict, a skill with neither edge. Left out unless asked for.
   */
  readonly rare?: boolean;
}

/** Day numbers below are offsets; what they are counted from is drawn too. */
export interface Draft {
  readonly settings: OracleSettings;
  readonly skills: readonly SkillRow[];
  readonly children: readonly ChildDraft[];
}

export interface ChildDraft {
  readonly gestation: number | null;
  readonly secondGestation: number | null | "same";
  readonly secondBirth: boolean;
  readonly monthsAtAsOf: number;
  readonly daysOff: number;
  readonly countFromTerm: boolean;
  readonly enrolments: readonly EnrolmentDraft[];
  readonly observations: readonly ObservationDraft[];
}

export interface EnrolmentDraft {
  readonly from: Place;
  readonly stay: number | null;
  readonly blank: boolean;
  readonly site: string;
  readonly therapist: string;
}

export interface ObservationDraft {
  readonly skill: number;
  readonly when: Place;
  readonly result: Result;
  readonly observer: string | null;
  readonly entered: number | null;
  /** A second row of the same child, skill and day. */
  readonly again: "no" | "exact copy" | { readonly result: Result; readonly observer: string | null };
}

/** A day, counted from the birth, the as-of date or an enrolment. */
export interface Place {
  readonly anchor: "birth" | "asOf" | "enrolled" | "left";
  readonly days: number;
}

export function draftArbitrary(options: CohortOptions): fc.Arbitrary<Draft> {
  return fc.record({
    settings,
    skills: skillsOf(options),
    children: fc.array(child(options), { minLength: 1, maxLength: options.maxChildren ?? 8 }),
  });
}

const asOf = fc.constantFrom(
  ...["2024-02-29", "2025-02-28", "2025-03-01", "2024-12-31", "2025-01-31", "2025-05-31", "2026-09-30", "2026-07-01"],
);

const settings: fc.Arbitrary<OracleSettings> = fc
  .record({
    asOf,
    periodDays: fc.constantFrom(null, 0, 30, 89, 365),
    cutOffDays: fc.constantFrom(null, null, 0, -10, 20),
    belowDays: fc.constantFrom(259, 259, 259, 224),
    untilMonths: fc.constantFrom<OracleSettings["untilMonths"]>(24, 24, 24, 12, 36, "24 corrected", "always"),
    edges: fc.constantFrom([0, 3, 6, 9, 12, 18, 24, 36], [0, 3, 6, 9, 12, 18, 24, 36], [6, 12, 24], [0, 3.8, 12]),
    recheckDays: fc.constantFrom(90, 90, 60, Infinity),
    disagreement: fc.constantFrom("not met" as const, "not met" as const, "met" as const),
    by: fc.constantFrom([], ["Site"], ["Therapist"], ["Site", "Therapist"]),
  })
  .map(({ periodDays, cutOffDays, ...rest }) => ({
    ...rest,
    from: periodDays === null ? null : addDays(rest.asOf, -periodDays),
    enteredBy: cutOffDays === null ? null : addDays(rest.asOf, cutOffDays),
  }));

const WINDOWS: readonly (readonly [number | null, number | null])[] = [
  ...([
    [0, 4],
    [3.8, 9.2],
    [4, 9],
    [5.9, 13.7],
    [8.2, 17.6],
    [6, 18],
    [12, 24],
    [10.5, 23],
    [18, 25.5],
  ] as const),
  ...([
    [null, 6],
    [null, 9.5],
    [null, 24],
    [7.4, null],
    [12, null],
  ] as const),
];

function skillsOf({ maxSkills = 5, rare = false }: CohortOptions): fc.Arbitrary<SkillRow[]> {
  const one = fc.record({
    window: fc.constantFrom(...WINDOWS, ...(rare ? [[null, null] as const] : [])),
    area: fc.constantFrom("gross motor", "speech", "cognitive"),
    ageBasis: fc.constantFrom<SkillRow["ageBasis"]>("corrected", "chronological", null),
    expectedShare: fc.constantFrom(0.99, 0.75, null),
    follows: fc.option(fc.nat({ max: maxSkills }), { freq: 1 }),
  });
  return fc.tuple(fc.array(one, { minLength: 1, maxLength: maxSkills }), fc.boolean()).map(([drafts, reversed]) => {
    const skills = drafts.map(({ window: [opens, closes], follows, ...rest }, i): SkillRow => {
      // Only a skill drawn before this one: chains of any length, never a circle.
      const before = follows === null || i === 0 ? null : skillId(follows % i);
      return { skill: skillId(i), label: `Does thing ${i + 1}`, opens, closes, follows: before, ...rest };
    });
    return reversed ? skills.reverse() : skills;
  });
}

function child({ maxSkills = 5, rare = false }: CohortOptions): fc.Arbitrary<ChildDraft> {
  const seldom = rare ? fc.constantFrom(true, false, false, false, false, false, false) : fc.constant(false);
  const gestation = fc.constantFrom(null, 280, 290, 259, 258, 252, 245, 224, 223, 196, 182, 168);
  return fc.record({
    gestation,
    secondGestation: rare
      ? fc.oneof({ weight: 5, arbitrary: fc.constant("same" as const) }, gestation)
      : fc.constant("same"),
    secondBirth: seldom,
    monthsAtAsOf: fc.oneof(fc.constantFrom(0, 3, 4, 6, 9, 12, 12, 18, 24, 24, 24, 25, 25, 36), fc.nat({ max: 40 })),
    daysOff: fc.oneof(fc.constantFrom(-1, 0, 0, 1), fc.integer({ min: -40, max: 40 })),
    countFromTerm: fc.boolean(),
    enrolments: fc.array(enrolment(seldom), { minLength: 1, maxLength: 4 }),
    observations: fc.array(observation(maxSkills), { maxLength: 24 }),
  });
}

function enrolment(seldom: fc.Arbitrary<boolean>): fc.Arbitrary<EnrolmentDraft> {
  return fc.record({
    from: fc.oneof(
      fc.record({ anchor: fc.constant("birth" as const), days: fc.constantFrom(0, 1, 30, 100, 200, 365, 500) }),
      fc.record({ anchor: fc.constant("asOf" as const), days: fc.constantFrom(-400, -120, -90, -31, -1, 0, 1, 40) }),
    ),
    stay: fc.oneof(
      { weight: 2, arbitrary: fc.constant(null) },
      { weight: 3, arbitrary: fc.constantFrom(1, 30, 31, 60, 89, 90, 120, 200, 365, 399, 400, 401) },
      { weight: 1, arbitrary: seldom.map((empty) => (empty ? 0 : 2)) },
    ),
    blank: fc.constantFrom(true, false, false, false, false),
    site: fc.constantFrom("North", "South", "East"),
    therapist: fc.constantFrom("T1", "T2"),
  });
}

function observation(maxSkills: number): fc.Arbitrary<ObservationDraft> {
  const result = fc.constantFrom<Result>("met", "met", "met", "not met", "not met", "emerging", "lost");
  const observer = fc.constantFrom("T1", "T2", "t10", null, null);
  const near = [-91, -90, -89, -60, -1, 0, 1, 30];
  return fc.record({
    skill: fc.nat({ max: maxSkills - 1 }),
    when: fc.oneof(
      fc.record({
        anchor: fc.constant("birth" as const),
        days: fc.oneof(fc.constantFrom(-1, 0, 0, 1), fc.nat({ max: 900 })),
      }),
      fc.record({
        anchor: fc.constant("asOf" as const),
        days: fc.oneof(fc.constantFrom(...near), fc.integer({ min: -700, max: 5 })),
      }),
      fc.record({ anchor: fc.constantFrom("enrolled" as const, "left" as const), days: fc.constantFrom(...near) }),
    ),
    result,
    observer,
    entered: fc.constantFrom(null, null, 0, 3, 25, 60),
    again: fc.oneof(
      { weight: 4, arbitrary: fc.constant("no" as const) },
      { weight: 1, arbitrary: fc.constant("exact copy" as const) },
      { weight: 2, arbitrary: fc.record({ result, observer }) },
    ),
  });
}

export function skillId(index: number): string {
  return `s${index + 1}`;
}
