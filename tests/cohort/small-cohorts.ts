import * as fc from "fast-check";
import { type AgeBasis, ageClock, type CorrectionRule } from "../../src/age/correction";
import { dayFromIso } from "../../src/age/day";
import type { Cohort } from "../../src/cohort/cohort";
import { Following } from "../../src/cohort/following";
import { sortLooks } from "../../src/cohort/looks";
import { type Enrolments, NO_DAY, type Observations, type Skill } from "../../src/records/records";

export interface Row {
  readonly child: number;
  readonly skill: number;
  readonly day: number;
  readonly result: number;
  readonly exact: number;
  readonly observer: number;
}

export interface Child {
  readonly birth: number;
  readonly gestationDays: number | null;
}

export interface SmallProgram {
  readonly children: readonly Child[];
  readonly rows: readonly Row[];
  readonly bases: readonly AgeBasis[];
  readonly rule: CorrectionRule;
}

export const USUAL_RULE: CorrectionRule = { belowDays: 259, untilMonths: 24, untilAge: "chronological" };

/** A day of ISO text that must exist. */
export function day(iso: string): number {
  const day = dayFromIso(iso);
  if (day === null) throw new Error(`no such day: ${iso}`);
  return day;
}

export function observationsOf(rows: readonly Row[]): Observations {
  const named = rows.some((row) => row.observer >= 0);
  return {
    child: Int32Array.from(rows, (row) => row.child),
    skill: Uint16Array.from(rows, (row) => row.skill),
    day: Int32Array.from(rows, (row) => row.day),
    result: Uint8Array.from(rows, (row) => row.result),
    exact: Uint8Array.from(rows, (row) => row.exact),
    observer: Int32Array.from(rows, (row) => row.observer),
    observers: named ? ["T1", "T2", "T3"] : [],
    entered: new Int32Array(rows.length),
    lastEntered: NO_DAY,
  };
}

export function cohortOf({ children, rows, bases, rule }: SmallProgram): Cohort {
  const enrolments: Enrolments = {
    child: new Int32Array(0),
    enrolled: new Int32Array(0),
    left: new Int32Array(0),
    columns: [],
  };
  return {
    ids: children.map((_, child) => `C${child + 1}`),
    clocks: children.map(({ birth, gestationDays }) => ageClock(birth, gestationDays, rule)),
    skills: bases.map(skillOn),
    looks: sortLooks(observationsOf(rows), children.length),
    observers: [],
    enrolments,
    following: new Following(enrolments, children.length),
    disagreementIsMet: false,
  };
}

/** Few children, skills and days, so that looks fall on one day, on band edges, and in every order. */
export function smallPrograms(daysApart = 1200): fc.Arbitrary<SmallProgram> {
  return fc
    .record({
      children: fc.array(childBornAnyDay, { minLength: 1, maxLength: 5 }),
      bases: fc.array(fc.constantFrom<AgeBasis>("corrected", "chronological"), { minLength: 1, maxLength: 4 }),
      rule: fc.record({
        belowDays: fc.constantFrom(0, 259, 280),
        untilMonths: fc.constantFrom(0, 6, 24, 36, Infinity),
        untilAge: fc.constantFrom<"chronological" | "corrected">("chronological", "corrected"),
      }),
    })
    .chain(({ children, bases, rule }) =>
      fc
        .array(rowOf(children, bases.length, daysApart), { maxLength: 60 })
        .map((rows) => ({ children, rows, bases, rule })),
    );
}

const childBornAnyDay: fc.Arbitrary<Child> = fc.record({
  birth: fc.integer({ min: day("2019-12-01"), max: day("2024-03-31") }),
  gestationDays: fc.oneof(fc.constant(null), fc.integer({ min: 154, max: 300 })),
});

function rowOf(children: readonly Child[], skillCount: number, daysApart: number): fc.Arbitrary<Row> {
  return fc
    .record({
      child: fc.nat(children.length - 1),
      skill: fc.nat(skillCount - 1),
      day: fc.nat(daysApart),
      result: fc.nat(3),
      exact: fc.nat(1),
      observer: fc.integer({ min: -1, max: 2 }),
    })
    .map((row) => ({ ...row, day: row.day + (children[row.child] as Child).birth }));
}

function skillOn(ageBasis: AgeBasis, index: number): Skill {
  return {
    id: `S${index + 1}`,
    label: `Skill ${index + 1}`,
    area: "speech",
    opensMonths: null,
    closesMonths: null,
    ageBasis,
    expectedShare: null,
    follows: null,
    tryTogether: "",
    sense: null,
    basis: "",
  };
}
