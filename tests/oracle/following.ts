/** Who is followed when, and under which enrolment. METHOD.md, sections 5 and 9. */
import { addDays, firstDayOfQuarter } from "./calendar";
import type { ChildRow, ObservationRow, OracleInput } from "./input";

export interface Person {
  readonly id: string;
  readonly birth: string;
  readonly gestation: number | null;
  readonly enrolments: readonly Enrolment[];
  readonly observations: readonly ObservationRow[];
  readonly disagreement: "not met" | "met";
}

export interface Enrolment {
  readonly enrolled: string;
  readonly left: string | null;
  readonly Site: string;
  readonly Therapist: string;
}

/** Children in order of first appearance, without those whose rows give different birth dates. */
export function peopleOf(input: OracleInput): Person[] {
  const rowsOf = new Map<string, ChildRow[]>();
  for (const row of input.children) rowsOf.set(row.child, [...(rowsOf.get(row.child) ?? []), row]);
  const people: Person[] = [];
  for (const [id, rows] of rowsOf) {
    const births = new Set(rows.map((row) => row.birth));
    const [birth] = births;
    if (birth === undefined || births.size > 1) continue;
    const observations = usedObservations(input, id, birth);
    people.push({
      id,
      birth,
      gestation: gestationOf(rows),
      enrolments: enrolmentsOf(rows, observations),
      observations,
      disagreement: input.settings.disagreement ?? "not met",
    });
  }
  return people;
}

export function isFollowed(person: Person, day: string): boolean {
  return enrolmentInForce(person, day) !== null;
}

/** Of the enrolments that hold this day the later begun; of two begun on one day the one lower on the sheet. */
export function enrolmentInForce(person: Person, day: string): Enrolment | null {
  return laterBegun(person.enrolments.filter((each) => holds(each, day)));
}

/** Followed on some day up to the as-of date: an enrolment that has a day, and begins by then. */
export function isEverFollowed(person: Person, asOf: string): boolean {
  return person.enrolments.some((each) => each.enrolled <= asOf && holds(each, each.enrolled));
}

export function latestEnrolment(person: Person, asOf: string): Enrolment {
  const latest = laterBegun(person.enrolments.filter((each) => each.enrolled <= asOf));
  if (latest === null) throw new RangeError("latestEnrolment: no enrolment has begun");
  return latest;
}

export function firstEnrolmentDay(person: Person, asOf: string): string {
  const [first] = person.enrolments
    .map((each) => each.enrolled)
    .filter((day) => day <= asOf)
    .sort();
  if (first === undefined) throw new RangeError("firstEnrolmentDay: no enrolment has begun");
  return first;
}

/** The last day of a child who left in the period and is not followed again by the as-of date; null for all others. */
export function lastDayOfLeaver(person: Person, asOf: string, from: string | null): string | null {
  const firstDay = from ?? firstDayOfQuarter(asOf);
  for (const each of person.enrolments) {
    if (each.left === null || each.left < firstDay || each.left > asOf || each.enrolled >= each.left) continue;
    let again = false;
    for (let day = each.left; day <= asOf; day = addDays(day, 1)) again = again || isFollowed(person, day);
    if (!again) return addDays(each.left, -1);
  }
  return null;
}

function holds(enrolment: Enrolment, day: string): boolean {
  return enrolment.enrolled <= day && (enrolment.left === null || day < enrolment.left);
}

function laterBegun(enrolments: readonly Enrolment[]): Enrolment | null {
  let latest: Enrolment | null = null;
  for (const each of enrolments) if (latest === null || each.enrolled >= latest.enrolled) latest = each;
  return latest;
}

/** The one that is recorded; none where two rows say different things. */
function gestationOf(rows: readonly ChildRow[]): number | null {
  const recorded = new Set(rows.map((row) => row.gestation).filter((days) => days !== null));
  const [only] = recorded;
  return recorded.size === 1 && only !== undefined ? only : null;
}

function enrolmentsOf(rows: readonly ChildRow[], observations: readonly ObservationRow[]): Enrolment[] {
  const [firstObservation] = observations.map((each) => each.date).sort();
  const enrolments: Enrolment[] = [];
  for (const row of rows) {
    const enrolled = row.enrolled ?? firstObservation;
    if (enrolled === undefined) continue;
    enrolments.push({ enrolled, left: row.left, Site: row.site, Therapist: row.therapist });
  }
  return enrolments;
}

/** Between birth and the as-of date, and entered by the cut-off where both are given. */
function usedObservations(input: OracleInput, child: string, birth: string): ObservationRow[] {
  const { asOf, enteredBy } = input.settings;
  return input.observations.filter((row) => {
    if (row.child !== child || !input.skills.some((skill) => skill.skill === row.skill)) return false;
    if (row.date < birth || row.date > asOf) return false;
    return enteredBy === null || !row.entered || row.entered <= enteredBy;
  });
}
