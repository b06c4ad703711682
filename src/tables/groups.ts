import { type Cohort } from "../cohort/cohort";
import { findGroupColumn } from "../records/children/groups";
import type { GroupColumn } from "../records/records";
import type { Settings } from "../settings/settings";
import type { TableColumn } from "./table";

/** The groups of a table: children put together by the values of one or more columns of Children, crossed. */
export interface Groups {
  readonly columns: readonly TableColumn[];
  /** The values of each group, in the order in which groups are listed; one empty entry without grouping. */
  readonly values: readonly (readonly string[])[];
  /** The group of a row of Enrolments. */
  readonly ofEnrolment: Int32Array;
}

/** What is wrong with the names of `by`, and which columns Children has; null where each is one of them. */
export function unknownColumn(columns: readonly GroupColumn[], by: Settings["by"]): string | null {
  const unknown = by.find((name) => !findGroupColumn(columns, name));
  if (unknown === undefined) return null;
  const known = columns.map(({ heading }) => heading).join(", ") || "none";
  return `Children has no column "${unknown}" to group by. It has: ${known}.`;
}

/**
 * Groups are listed by the code units of their values, so that no locale can reorder them.
 *
 * @throws {RangeError} when a name of `by` is no column of Children
 */
export function groupsBy(cohort: Cohort, by: Settings["by"]): Groups {
  const unknown = unknownColumn(cohort.enrolments.columns, by);
  if (unknown !== null) throw new RangeError(unknown);
  const columns = by.flatMap((name) => findGroupColumn(cohort.enrolments.columns, name) ?? []);
  const keys = Array.from(cohort.enrolments.child, (_, row) => columns.map((column) => column.values[row] ?? ""));
  const distinct = new Map(keys.map((values) => [keyOf(values), values]));
  const values = [...distinct.values()].sort(byCodeUnit);
  const position = new Map(values.map((each, index) => [keyOf(each), index]));
  return {
    columns: columns.map(({ heading }) => ({ key: heading, label: heading, unit: "text" })),
    values: values.length === 0 && by.length === 0 ? [[]] : values,
    ofEnrolment: Int32Array.from(keys, (each) => position.get(keyOf(each)) as number),
  };
}

function keyOf(values: readonly string[]): string {
  return JSON.stringify(values);
}

function byCodeUnit(a: readonly string[], b: readonly string[]): number {
  for (let at = 0; at < a.length; at += 1) {
    if (a[at] !== b[at]) return (a[at] as string) < (b[at] as string) ? -1 : 1;
  }
  return 0;
}
