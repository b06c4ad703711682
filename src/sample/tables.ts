import type { Day } from "../age/day";
import type { SampleChild } from "./children";
import type { SampleObservation } from "./observations";
import { type SampleSkill, SKILLS } from "./skills";

/** One table of the workbook as the program would keep it. Days are whole days since January 1, 1970. */
export interface SampleTable {
  readonly name: string;
  readonly headings: readonly string[];
  /** Which columns hold days, by heading. */
  readonly dayColumns: readonly string[];
  readonly rows: readonly (readonly SampleCell[])[];
}

export type SampleCell = string | number | null;

export function childrenTable(children: readonly SampleChild[]): SampleTable {
  return {
    name: "Children",
    headings: ["Child", "Birth date", "Gestation", "Site", "Therapist", "Enrolled", "Left", "Family", "Home language"],
    dayColumns: ["Birth date", "Enrolled", "Left"],
    rows: children
      .flatMap((child) => child.stays.map((stay) => ({ child, stay })))
      .sort((a, b) => a.stay.enrolled - b.stay.enrolled)
      .map(({ child, stay }) => [
        child.id,
        child.birth,
        child.gestation.written,
        stay.site,
        stay.therapist,
        stay.enrolled,
        stay.left,
        child.family || null,
        child.homeLanguage,
      ]),
  };
}

/** Rows in the order in which they were typed in; what is entered after the last day is not there yet. */
export function observationsTable(
  children: readonly SampleChild[],
  observations: readonly SampleObservation[],
  last: Day,
): SampleTable {
  const typed = (row: SampleObservation): Day => row.entered ?? row.day;
  const rows = observations.filter((row) => typed(row) <= last).sort((a, b) => typed(a) - typed(b));
  return {
    name: "Observations",
    headings: ["Child", "Skill", "Date", "Result", "Observer", "Entered"],
    dayColumns: ["Date", "Entered"],
    rows: rows.map((row) => [
      idOf(children, row.child),
      (SKILLS[row.skill] as SampleSkill).id,
      row.day,
      row.result,
      row.observer,
      row.entered,
    ]),
  };
}

export function skillsTable(): SampleTable {
  return {
    name: "Skills",
    headings: [
      "Skill",
      "Label",
      "Area",
      "Opens",
      "Closes",
      "Age basis",
      "Expected share",
      "Follows",
      "Try together",
      "Sense",
      "Basis",
    ],
    dayColumns: [],
    rows: SKILLS.map((skill) => [
      skill.id,
      skill.label,
      skill.area,
      skill.opensMonths,
      skill.closesMonths,
      skill.ageBasis || null,
      skill.expectedShare,
      skill.follows || null,
      skill.tryTogether,
      skill.sense || null,
      skill.basis,
    ]),
  };
}

export function idOf(children: readonly SampleChild[], index: number): string {
  return (children[index] as SampleChild).id;
}
