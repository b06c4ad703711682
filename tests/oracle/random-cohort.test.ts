import * as fc from "fast-check";
import { stringAt } from "../../src/workbook/cells";
import { asWorkbook } from "./as-workbook";
import type { OracleInput, OracleRow } from "./input";
import { oracleTables, type OracleTableId } from "./oracle-tables";
import { cohortArbitrary, seededCohort } from "./random-cohort";

const RUNS = { seed: 20240229, numRuns: 300 };
const BOX_KEYS = ["hadAtFirstLook", "gained", "notMet", "outOfDate", "lost", "notAssessed"];
const number = (row: OracleRow, key: string): number => Number(row[key]);
const sumOf = (rows: readonly OracleRow[], key: string): number => rows.reduce((sum, row) => sum + number(row, key), 0);
const always = (check: (input: OracleInput) => void): void =>
  fc.assert(fc.property(cohortArbitrary({ rare: true }), check), RUNS);

test("every followed child stands in exactly one box of every skill", () => {
  always((input) => {
    const tables = oracleTables(input);
    const followed = new Set(tables["skill-status"].map((row) => row["child"])).size;
    for (const { skill } of input.skills) {
      const rows = tables["met-by-band"].filter((row) => row["skill"] === skill);
      expect(sumOf(rows, "children")).toBe(followed);
      expect(BOX_KEYS.reduce((sum, key) => sum + sumOf(rows, key), 0)).toBe(followed);
    }
  });
});

test("boxes sum to the children in every row, of those who left too; areas sum their skills", () => {
  always((input) => {
    const tables = oracleTables(input);
    for (const id of ["met-by-band", "met-by-band-left"] as const) {
      for (const row of tables[id]) {
        expect(BOX_KEYS.reduce((sum, key) => sum + number(row, key), 0)).toBe(number(row, "children"));
        expect(number(row, "lowest")).toBeLessThanOrEqual(number(row, "highest"));
      }
      const [all, single] = [true, false].map((all) => tables[id].filter((row) => (row["skill"] === "all") === all));
      for (const key of ["children", ...BOX_KEYS]) expect(sumOf(all ?? [], key)).toBe(sumOf(single ?? [], key));
    }
  });
});

test("reached by age: met, not met and not known are all children, at every age; met never falls", () => {
  always((input) => {
    const tables = oracleTables(input);
    const before = new Map<string, number>();
    for (const row of tables["reached-by-age"]) {
      expect(number(row, "met") + number(row, "notMet") + number(row, "notKnown")).toBe(number(row, "children"));
      const key = JSON.stringify([row["Site"], row["Therapist"], row["skill"]]);
      expect(number(row, "met")).toBeGreaterThanOrEqual(before.get(key) ?? 0);
      before.set(key, number(row, "met"));
    }
  });
});

test("age when met: had, interval and not met are the children, and so many intervals are handed out", () => {
  always((input) => {
    const tables = oracleTables(input);
    for (const row of tables["age-when-met"]) {
      expect(number(row, "hadAtFirstLook") + number(row, "interval") + number(row, "notMet")).toBe(
        number(row, "children"),
      );
    }
    expect(tables["age-intervals"]).toHaveLength(sumOf(tables["age-when-met"], "children"));
    expect(tables["enrolment-intervals"]).toHaveLength(sumOf(tables["since-enrollment"], "children"));
    for (const row of [...tables["age-intervals"], ...tables["enrolment-intervals"]]) {
      if (row["by"] !== null) expect(number(row, "after")).toBeLessThanOrEqual(number(row, "by"));
    }
  });
});

test("the order of the observations and a second copy of each change nothing", () => {
  always((input) => {
    const shuffled = [...input.observations].reverse();
    const expected = oracleTables(input);
    expect(oracleTables({ ...input, observations: [...shuffled, ...shuffled] })).toEqual(expected);
  });
});

test("the cases that the generator is there for do come up", () => {
  const seen = new Map<string, number>();
  const count = (what: string): void => void seen.set(what, (seen.get(what) ?? 0) + 1);
  for (let seed = 1; seed <= 300; seed += 1) {
    const tables = oracleTables(seededCohort(seed));
    for (const [id, rows] of Object.entries(tables)) if (rows.length > 0) count(id);
    for (const row of tables["skill-status"]) {
      for (const key of ["window", "state", "box", "timing", "reason"]) count(`${key}: ${row[key]}`);
    }
    for (const row of tables["met-by-band"])
      if (String(row["band"]).startsWith("before")) count("below the first edge");
    for (const row of tables["age-intervals"]) if (row["after"] === row["by"]) count("met on the day of birth");
  }
  const tableIds: OracleTableId[] = ["met-by-band", "met-by-band-left", "since-enrollment", "agreement"];
  const wanted = [
    ...tableIds,
    ...["before window", "in window", "past window"].map((each) => `window: ${each}`),
    ...["met", "emerging", "not met", "lost", "lost to confirm", "not assessed"].map((each) => `state: ${each}`),
    ...["had at first look", "gained here", "not met", "out of date", "lost"].map((each) => `box: ${each}`),
    ...["early", "in window", "late", "not known"].map((each) => `timing: ${each}`),
    ...["reason: correction stopped", "below the first edge", "met on the day of birth"],
  ];
  expect(wanted.filter((each) => (seen.get(each) ?? 0) < 10)).toEqual([]);
});

test("the same seed is the same program; another seed is another", () => {
  expect(seededCohort(7)).toEqual(seededCohort(7));
  expect(seededCohort(7)).not.toEqual(seededCohort(8));
});

test("as a workbook: three tables that hold every row under its heading", () => {
  const input = seededCohort(11);
  const workbook = asWorkbook(input);
  expect(workbook.sheets.flatMap((sheet) => sheet.tables.map((table) => table.name))).toEqual([
    "Children",
    "Observations",
    "Skills",
  ]);
  expect(workbook.sheets.map((sheet) => sheet.grid.rowCount - 1)).toEqual([
    input.children.length,
    input.observations.length,
    input.skills.length,
  ]);
  const [children] = workbook.sheets;
  expect(children && stringAt(children.grid, 1, 0)).toBe(input.children[0]?.child);
  expect(children && stringAt(children.grid, 1, 1)).toBe(input.children[0]?.birth);
  const early = asWorkbook({ ...input, children: input.children.map((row) => ({ ...row, gestation: 199 })) });
  expect(early.sheets[0] && stringAt(early.sheets[0].grid, 1, 2)).toBe("28+3");
});
