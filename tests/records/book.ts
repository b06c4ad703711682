import { gridOf } from "../../src/workbook/grid-builder";
import type { CellRange, SheetIn, TableIn, WorkbookIn } from "../../src/workbook/workbook";
import { dayFromIso } from "../../src/age/day";
import { type DateSystem, serialOf } from "../../src/age/serial";
import { readRecords, RecordsUnusable } from "../../src/records/read-records";
import type { Decision } from "../../src/records/corrections/decisions";
import type { Finding } from "../../src/records/findings/finding";
import type { Records } from "../../src/records/records";
import { parseSettings, type Settings } from "../../src/settings/settings";

export type Rows = readonly (readonly unknown[])[];

/** The serial number of an ISO date. */
export function serial(iso: string, system: DateSystem = 1900): number {
  return serialOf(dayFromIso(iso) as number, system);
}

export function sheet(name: string, rows: Rows, more: { tables?: TableIn[]; merged?: CellRange[] } = {}): SheetIn {
  return { name, grid: gridOf(rows), tables: more.tables ?? [], merged: more.merged ?? [] };
}

export function book(sheets: SheetIn[], dateSystem: DateSystem = 1900): WorkbookIn {
  return { dateSystem, sheets };
}

export const CHILDREN: Rows = [
  ["Child", "Birth date", "Gestation", "Site", "Therapist", "Enrolled", "Left", "Family"],
  ["A1", "2024-03-31", "28+3", "North", "T1", "2024-09-01", null, null],
  ["A2", "2024-05-15", null, "South", "T2", "2024-10-01", "2026-01-15", "F1"],
  ["A3", "2025-01-20", 38, "North", "T1", "2025-03-01", null, "F1"],
];

export const OBSERVATIONS: Rows = [
  ["Child", "Skill", "Date", "Result", "Observer", "Entered"],
  ["A1", "sits", "2024-10-02", "not met", "T1", "2024-10-03"],
  ["A1", "sits", "2024-12-02", "met", "T1", "2024-12-03"],
  ["A2", "sits", "2024-12-10", "emerging", "T2", "2024-12-11"],
  ["A3", "walks", "2026-02-10", "met", "T1", "2026-02-11"],
];

export const SKILLS: Rows = [
  ["Skill", "Label", "Area", "Opens", "Closes", "Age basis", "Expected share", "Follows", "Try together", "Basis"],
  ["sits", "Sits without support", "gross motor", 3.8, 9.2, null, 0.99, null, "Play on the floor", "WHO"],
  ["crawls", "Crawls", "gross motor", 5.2, 13.5, null, 0.99, null, null, "WHO"],
  ["walks", "Walks alone", "gross motor", 8.2, 17.6, "chronological", 0.99, "crawls", null, "WHO"],
];

export function clean(): SheetIn[] {
  return [sheet("Kids", CHILDREN), sheet("Looks", OBSERVATIONS), sheet("List", SKILLS)];
}

export interface Given {
  readonly children?: Rows;
  readonly observations?: Rows;
  readonly skills?: Rows;
  readonly more?: readonly SheetIn[];
}

/** A clean workbook with some of its sheets replaced. */
export function bookWith({
  children = CHILDREN,
  observations = OBSERVATIONS,
  skills = SKILLS,
  more = [],
}: Given): WorkbookIn {
  return book([sheet("Kids", children), sheet("Looks", observations), sheet("List", skills), ...more]);
}

export function settingsOf(entries: Record<string, unknown> = {}): Settings {
  const parsed = parseSettings(entries, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return parsed.settings;
}

export function read(
  given: Given | WorkbookIn,
  entries: Record<string, unknown> = {},
  decisions: Decision[] = [],
): Records {
  return readRecords("sheets" in given ? given : bookWith(given), settingsOf(entries), decisions);
}

/** `rule cell` of every finding that is not about an absent optional table. */
export function listed(records: { readonly findings: readonly Finding[] }): string[] {
  return records.findings.filter(({ rule }) => rule !== "table-missing").map(({ rule, cell }) => `${rule} ${cell}`);
}

export function unusable(
  given: Given | WorkbookIn,
  entries: Record<string, unknown> = {},
  decisions: Decision[] = [],
): RecordsUnusable {
  try {
    read(given, entries, decisions);
  } catch (error) {
    if (error instanceof RecordsUnusable) return error;
    throw error;
  }
  throw new Error("the workbook could be read");
}
