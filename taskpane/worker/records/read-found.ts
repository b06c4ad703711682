import { type Day, isoOf } from "../../../src/age/day";
import { addMonths } from "../../../src/age/months";
import type { Decision } from "../../../src/records/corrections/decisions";
import { DecisionsInForce } from "../../../src/records/corrections/in-force";
import { findGroupColumn } from "../../../src/records/children/groups";
import { readRecords, RecordsUnusable } from "../../../src/records/read-records";
import { OtherWorkbook, understand } from "../../../src/records/understanding/understand";
import type { Understanding } from "../../../src/records/understanding/understanding";
import type { Records } from "../../../src/records/records";
import { firstDayOfQuarter, type Settings } from "../../../src/settings/settings";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import type { RecordsFound } from "./found";
import { countsOf, type GroupedFindings, groupFindings, groupOut } from "./finding-groups";
import { mapTables, regionsOf } from "./mapping";
import { repairOf } from "./repairs";

export interface ReadFound {
  readonly found: RecordsFound;
  readonly groups: readonly GroupedFindings[];
  /** Null where they cannot be used; `found.failure` says why. */
  readonly records: Records | null;
}

/** Reads the records, and puts what was found in a form that can be shown; findings stay, to be asked for. */
export function readFound(workbook: WorkbookIn, settings: Settings, decisions: readonly Decision[]): ReadFound {
  const { records, unusable } = readOrFail(workbook, settings, decisions);
  const { input, findings } = records ?? unusable;
  const { headings } = new DecisionsInForce(decisions);
  const regions = regionsOf(workbook, headings);
  const groups = groupFindings(findings);
  const found: RecordsFound = {
    failure: unusable?.message ?? null,
    understanding: understood(workbook, decisions),
    tables: mapTables(input, regions, headings),
    groups: groups.map((group) => ({ ...groupOut(group), repair: repairOf(group, workbook, regions) })),
    counts: countsOf(findings),
    groupColumns: records ? groupColumnsOf(records) : [],
    therapists: records ? therapistsOf(records) : null,
    skills: records ? records.skills.map(({ id, label }) => ({ id, label })) : [],
    ...lastLookOf(records),
  };
  return { found, groups, records };
}

/** What was settled for another workbook settles nothing here. */
function understood(workbook: WorkbookIn, decisions: readonly Decision[]): Understanding {
  try {
    return understand(workbook, { settings: {}, decisions });
  } catch (error) {
    if (error instanceof OtherWorkbook) return understand(workbook);
    throw error;
  }
}

type Outcome =
  | { readonly records: Records; readonly unusable: null }
  | { readonly records: null; readonly unusable: RecordsUnusable };

function readOrFail(workbook: WorkbookIn, settings: Settings, decisions: readonly Decision[]): Outcome {
  try {
    return { records: readRecords(workbook, settings, decisions), unusable: null };
  } catch (error) {
    if (error instanceof RecordsUnusable) return { records: null, unusable: error };
    throw error;
  }
}

function groupColumnsOf({ enrolments }: Records): RecordsFound["groupColumns"] {
  return enrolments.columns.map(({ heading, values }) => ({ heading, values: new Set(values).size }));
}

function therapistsOf({ enrolments }: Records): readonly string[] | null {
  const column = findGroupColumn(enrolments.columns, "Therapist");
  return column && [...new Set(column.values)].sort();
}

function lastLookOf(records: Records | null): Pick<RecordsFound, "lastLook" | "quarterEnd"> {
  const days = records?.observations.day ?? new Int32Array();
  if (days.length === 0) return { lastLook: null, quarterEnd: null };
  const last: Day = days.reduce((latest, day) => Math.max(latest, day));
  return { lastLook: isoOf(last), quarterEnd: isoOf(addMonths(firstDayOfQuarter(last), 3) - 1) };
}
