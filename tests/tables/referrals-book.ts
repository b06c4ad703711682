import fc from "fast-check";
import { buildCohort } from "../../src/cohort/cohort";
import { readRecords, RecordsUnusable } from "../../src/records/read-records";
import type { Records } from "../../src/records/records";
import { parseSettings, type Settings } from "../../src/settings/settings";
import { type TableContext, tableContext } from "../../src/tables/context";
import type { Table } from "../../src/tables/table";
import { gridOf } from "../../src/workbook/grid-builder";
import type { SheetIn, WorkbookIn } from "../../src/workbook/workbook";
import { asWorkbook } from "../oracle/as-workbook";
import { addDays } from "../oracle/calendar";
import type { OracleInput } from "../oracle/input";
import { cohortArbitrary } from "../oracle/random-cohort";
import type { ReferralRow } from "../oracle/referrals";

export interface ReferralProgram {
  readonly input: OracleInput;
  readonly referrals: readonly ReferralRow[];
}

const AREAS = ["gross motor", "speech", "sensory"];

/** A random program, its period of up to a year and a half, and referrals around and within it. */
export function referralPrograms(): fc.Arbitrary<ReferralProgram> {
  return fc
    .record({ input: cohortArbitrary(), periodDays: fc.integer({ min: 0, max: 500 }) })
    .chain(({ input, periodDays }) => {
      const { asOf } = input.settings;
      const settings = { ...input.settings, from: addDays(asOf, -periodDays), by: [] };
      const row = fc.record({
        child: fc.constantFrom(...new Set(input.children.map(({ child }) => child))),
        daysBack: fc.oneof(fc.nat(periodDays + 20), fc.nat(3)),
        areas: fc.subarray(AREAS, { minLength: 1 }),
        from: fc.constantFrom(null, "clinic", "family"),
      });
      return fc.array(row, { maxLength: 25 }).map((rows) => ({
        input: { ...input, settings },
        referrals: rows.map(({ daysBack, ...each }) => ({ ...each, referred: addDays(asOf, -daysBack) })),
      }));
    });
}

/** The workbook of a program with further sheets, each a table under its name. */
export function workbookWith(input: OracleInput, tables: Readonly<Record<string, readonly unknown[][]>>): WorkbookIn {
  const base = asWorkbook(input);
  return { ...base, sheets: [...base.sheets, ...Object.entries(tables).map(([name, rows]) => tableSheet(name, rows))] };
}

export function referralSheet(referrals: readonly ReferralRow[]): unknown[][] {
  return [
    ["Child", "Referred", "Area", "From"],
    ...referrals.map(({ child, referred, areas, from }) => [child, referred, areas.join("; "), from]),
  ];
}

/** A workbook of which no row can be used is refused as a whole; there is nothing to compare. */
export function contextFrom(
  workbook: WorkbookIn,
  entries: Record<string, unknown>,
): TableContext & { records: Records } {
  const settings = settingsFrom(entries);
  try {
    const records = readRecords(workbook, settings);
    return { ...tableContext(buildCohort(records, settings), settings, records), records };
  } catch (error) {
    fc.pre(!(error instanceof RecordsUnusable));
    throw error;
  }
}

export function entriesOf({ settings }: OracleInput): Record<string, unknown> {
  return {
    asOf: settings.asOf,
    from: settings.from ?? undefined,
    enteredBy: settings.enteredBy ?? undefined,
    correctBelow: `${Math.floor(settings.belowDays / 7)}+${settings.belowDays % 7}`,
    correctUntil: settings.untilMonths,
    edges: settings.edges,
    recheck: settings.recheckDays === Infinity ? "none" : settings.recheckDays,
    disagreement: settings.disagreement,
    by: settings.by,
  };
}

export function rowsOf({ columns, rows }: Table): Record<string, string | number | boolean | null>[] {
  return rows.map((row) => Object.fromEntries(columns.map(({ key }, at) => [key, row[at] ?? null])));
}

function tableSheet(name: string, rows: readonly unknown[][]): SheetIn {
  const right = Math.max(...rows.map((row) => row.length)) - 1;
  const range = { top: 0, left: 0, bottom: rows.length - 1, right };
  return { name, grid: gridOf(rows), tables: [{ name, range, headerRow: true, totalsRow: false }], merged: [] };
}

function settingsFrom(entries: Record<string, unknown>): Settings {
  const parsed = parseSettings(entries, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return parsed.settings;
}
