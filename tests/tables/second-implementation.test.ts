/**
 * The program against a second implementation that shares no code with it (tests/oracle), on random programs: every cell of
 * every table, through the reading of the records.
 */
import fc from "fast-check";
import { buildCohort } from "../../src/cohort/cohort";
import { readRecords, RecordsUnusable } from "../../src/records/read-records";
import type { Records } from "../../src/records/records";
import type { Settings } from "../../src/settings/settings";
import { TABLE_CATALOGUE } from "../../src/tables/catalogue";
import { tableContext } from "../../src/tables/context";
import { AgeEstimates } from "../../src/tables/estimates";
import type { TableId } from "../../src/tables/table";
import { asWorkbook } from "../oracle/as-workbook";
import { oracleEstimates } from "../oracle/estimates";
import type { OracleInput, OracleRow } from "../oracle/input";
import { oracleTables } from "../oracle/oracle-tables";
import { cohortArbitrary } from "../oracle/random-cohort";
import { settingsFor } from "../support/oracle-settings";

type Rows = Record<string, unknown>[];

/** What names a row, beside its groups. */
const KEYS = {
  "expected-by-now": ["skill", "area", "kind"],
  "met-by-band": ["skill", "area", "band"],
  "met-by-band-left": ["skill", "area", "band"],
  "reached-by-age": ["skill", "age"],
  "age-when-met": ["skill"],
  "since-enrollment": ["skill"],
  "skill-status": ["child", "skill"],
  agreement: ["skill"],
} as const satisfies Partial<Record<TableId, readonly string[]>>;
type Id = keyof typeof KEYS;

describe.each(Object.keys(KEYS) as Id[])("%s", (id) => {
  test("agrees cell by cell on random programs", () => {
    fc.assert(
      fc.property(cohortArbitrary(), (input) => compare(id, input, oracleTables(input)[id as "met-by-band"])),
      { numRuns: Number(process.env.WINDOWLINE_RUNS ?? 60) },
    );
  });
});

test.each(["age-when-met", "reached-by-age", "since-enrollment"] as const)("%s: estimates agree", (id) => {
  fc.assert(
    fc.property(cohortArbitrary({ maxChildren: 20, maxSkills: 2 }), (input) =>
      compare(id, input, withoutKaplanMeierShares(id, input, oracleEstimates(input)[id])),
    ),
    { numRuns: Number(process.env.WINDOWLINE_RUNS ?? 60) },
  );
});

test("boxes sum to the children followed, always", () => {
  fc.assert(
    fc.property(cohortArbitrary(), (input) => {
      for (const row of programRows("met-by-band", input)) {
        const boxes = ["hadAtFirstLook", "gained", "notMet", "outOfDate", "lost", "notAssessed"];
        expect(boxes.reduce((sum, key) => sum + Number(row[key]), 0)).toBe(row.children);
      }
    }),
  );
});

/**
 * Of exact and right-censored ages the program reads shares from Kaplan-Meier, which holds until the last look; the second
 * implementation reads all shares by the rule for intervals, which ends at the last age when anyone met the skill.
 */
function withoutKaplanMeierShares(id: Id, input: OracleInput, rows: readonly OracleRow[]): readonly OracleRow[] {
  const shareKey = id === "age-when-met" ? "shareByClose" : "estimate";
  const groupKey = (row: Record<string, unknown>) => [...input.settings.by, "skill"].map((key) => row[key]).join(" | ");
  const methods = new Map(programRows("age-when-met", input).map((row) => [groupKey(row), row.method]));
  return rows.map((row) => {
    if (id === "since-enrollment" || methods.get(groupKey(row)) !== "Kaplan-Meier") return row;
    return Object.fromEntries(Object.entries(row).filter(([key]) => key !== shareKey));
  });
}

function compare(id: Id, input: OracleInput, expected: readonly OracleRow[]): void {
  const keys = [...input.settings.by, ...KEYS[id]];
  const ours = byKey(programRows(id, input), keys);
  const theirs = byKey(expected, keys);
  expect([...ours.keys()].sort()).toEqual([...theirs.keys()].sort());
  for (const [key, row] of theirs) {
    for (const [name, value] of Object.entries(row)) {
      const own = ours.get(key)?.[name];
      const same = typeof value === "number" && typeof own === "number" ? Math.abs(value - own) < 1e-6 : value === own;
      if (!same) throw new Error(`${id}, ${key}, ${name}: second implementation ${value}, program ${String(own)}`);
    }
  }
}

function byKey(
  rows: readonly Record<string, unknown>[],
  keys: readonly string[],
): Map<string, Record<string, unknown>> {
  const map = new Map(rows.map((row) => [keys.map((key) => String(row[key])).join(" | "), row]));
  expect(map.size).toBe(rows.length);
  return map;
}

function programRows(id: TableId, input: OracleInput): Rows {
  const settings = settingsFor(input.settings);
  const records = recordsOf(input, settings);
  const estimates = new AgeEstimates(tableContext(buildCohort(records, settings), settings));
  const { columns, rows } = TABLE_CATALOGUE[id].make(estimates);
  return rows.map((row) => Object.fromEntries(columns.map(({ key }, index) => [key, row[index]])));
}

/** A workbook of which no row can be used is refused as a whole; there is nothing to compare. */
function recordsOf(input: OracleInput, settings: Settings): Records {
  try {
    return readRecords(asWorkbook(input), settings);
  } catch (error) {
    fc.pre(!(error instanceof RecordsUnusable));
    throw error;
  }
}
