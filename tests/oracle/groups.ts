import type { Enrolment, Person } from "./following";
import type { OracleRow } from "./input";

/** A child as it enters a table: the day it is looked at, and the enrolment whose columns group it. */
export interface Entry {
  readonly person: Person;
  readonly day: string;
  readonly enrolment: Enrolment;
}

export interface Group {
  /** The group's columns under their own headings; none where nothing is grouped. */
  readonly columns: OracleRow;
  readonly entries: readonly Entry[];
}

/** The groups that hold a child, several columns crossed, in the order of their texts. */
export function groupsOf(entries: readonly Entry[], by: readonly string[]): Group[] {
  const groups = new Map<string, { columns: OracleRow; entries: Entry[] }>();
  for (const entry of entries) {
    const columns: OracleRow = {};
    for (const heading of by) columns[heading] = textOf(entry.enrolment, heading);
    const key = JSON.stringify(columns);
    const group = groups.get(key) ?? { columns, entries: [] };
    group.entries.push(entry);
    groups.set(key, group);
  }
  return [...groups.keys()].sort().flatMap((key) => groups.get(key) ?? []);
}

function textOf(enrolment: Enrolment, heading: string): string {
  if (heading === "Site" || heading === "Therapist") return enrolment[heading];
  throw new RangeError(`groupsOf: children here have no column "${heading}"`);
}
