import { sourceOf } from "../../../src/records/fingerprint";
import { readRecords } from "../../../src/records/read-records";
import { reportJson } from "../../../src/report/json";
import type { Report } from "../../../src/report/report";
import { oneWorkbook } from "../../../src/workbook/sources";
import type { TableId } from "../../../src/tables/table";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { reportOf } from "../../support/report-of";
import { settingsOf } from "../book";
import { bookOf, bySite, byTable, byYear, columnOf, SAMPLE, together, WHOLE } from "./parts";

const SETTINGS = settingsOf({ asOf: "2026-09-30", by: "Site" });

/** Every table but those whose limits are drawn a thousand times: that no order moves these is tested with the report. */
const TABLES =
  "met-by-band met-by-band-left expected-by-now referrals referral-scan referral-steps ratings trend agreement".split(
    " ",
  ) as TableId[];

/** The figures of REPORT.json: all but what says where the rows are. */
function figures(workbook: WorkbookIn): string[] {
  return tablesOf(reportOf(workbook, SETTINGS, TABLES));
}

function tablesOf(report: Report): string[] {
  expect(report.tables).toHaveLength(TABLES.length);
  const lines = reportJson({ ...report, input: [], findings: [] }).split("\n");
  return lines.slice(0, lines.indexOf('  "provenance": {'));
}

const whole = figures(WHOLE);

test.each([
  ["one file a site", bySite],
  ["one file a table", byTable],
  ["one file a year, each with all children", byYear],
])("%s: every figure is that of the whole program, in any order of files", (_, cut) => {
  const parts = cut();
  expect(Object.keys(parts).length).toBeGreaterThan(1);
  expect(figures(together(parts))).toEqual(whole);
  // the Skills table says in which order skills are listed, and stands in each file or in one alone
  expect(figures(together(Object.fromEntries(Object.entries(parts).reverse())))).toEqual(whole);
});

test("a file of one table lacks no other", () => {
  const { findings } = readRecords(together(byTable()), SETTINGS);
  expect(findings.filter(({ rule }) => rule === "heading-unknown" || rule === "file-not-used")).toEqual([]);
});

test("without a column Site the name of each file is the site, and a note says so", () => {
  const parts = Object.fromEntries(
    Object.entries(bySite()).map(([file, tables]) => [
      file,
      tables.map((table) => {
        const at = table.name === "Children" ? columnOf(table, "Site") : -1;
        const without = <T>(cells: readonly T[]) => cells.filter((__, column) => column !== at);
        return { ...table, headings: without(table.headings), rows: table.rows.map(without) };
      }),
    ]),
  );
  const report = reportOf(together(parts), SETTINGS, TABLES);
  expect(tablesOf(report)).toEqual(whole);
  const notes = report.findings.filter(({ rule }) => rule === "site-from-file");
  expect(notes.map(({ severity, file }) => [severity, file])).toEqual(Object.keys(parts).map((file) => ["note", file]));
});

test("names of files that differ by the year alone are of no site", () => {
  const children = SAMPLE.tables[0]!;
  const at = columnOf(children, "Site");
  const without = <T>(cells: readonly T[]) => cells.filter((__, column) => column !== at);
  const parts = Object.fromEntries(
    Object.entries(byYear()).map(([file, tables]) => [
      file,
      tables.map((table) =>
        table.name === "Children"
          ? { ...table, headings: without(table.headings), rows: table.rows.map(without) }
          : table,
      ),
    ]),
  );
  const records = readRecords(together(parts), settingsOf({ asOf: "2026-09-30" }));
  expect(records.enrolments.columns.map(({ heading }) => heading)).not.toContain("Site");
  expect(records.children.ids).toHaveLength(90);
});

test("rows that another file has too count once, and are told in one note for each table", () => {
  const parts = byYear();
  const { input, findings } = readRecords(together(parts), SETTINGS);
  const [, second = ""] = Object.keys(parts);
  const skills = input.filter(({ table }) => table === "Skills");
  expect(skills.map(({ file, rows, used }) => [file, used > 0 ? rows === used : used])).toEqual(
    Object.keys(parts).map((file, at) => [file, at === 0 ? true : 0]),
  );
  expect(findings.filter(({ rule }) => rule === "exact-copy")).toEqual([]);
  const notes = findings.filter(({ rule, file }) => rule === "copy-in-other-file" && file === second);
  expect(notes.map(({ table, severity }) => `${table} ${severity}`)).toContain("Skills note");
  expect(notes.find(({ table }) => table === "Skills")?.advice).toBe(
    `Nothing to do: ${SAMPLE.tables[2]!.rows.length} rows of this table are in another file too, and counted once.`,
  );
});

test("rows of a table are counted file by file, and each row is used or left out for a reason", () => {
  const { input } = readRecords(together(bySite()), SETTINGS);
  for (const { rows, used, leftOut } of input) {
    expect(rows).toBe(used + Object.values(leftOut).reduce((sum, count) => sum + count, 0));
  }
  const observations = input.filter(({ table }) => table === "Observations");
  expect(observations.reduce((sum, { rows }) => sum + rows, 0)).toBe(SAMPLE.tables[1]!.rows.length);
  expect(new Set(observations.map(({ file }) => file)).size).toBe(observations.length);
});

describe("the fingerprint of several files", () => {
  const print = (workbook: WorkbookIn) => sourceOf(workbook, readRecords(workbook, SETTINGS), []);
  const parts = bySite();
  const there = print(together(parts));

  test("is the same in any order of files, and under other names", () => {
    const turned = print(together(Object.fromEntries(Object.entries(parts).reverse())));
    const renamed = print(
      together(Object.fromEntries(Object.entries(parts).map(([file, part]) => [`x${file}`, part]))),
    );
    expect([turned.fingerprint, renamed.fingerprint]).toEqual([there.fingerprint, there.fingerprint]);
  });

  test("moves with a cell of any file, and says in which", () => {
    const [[first = "", tables = []] = []] = Object.entries(parts);
    const children = tables[0]!;
    const [row = [], ...rows] = children.rows;
    const changed = { ...children, rows: [[...row.slice(0, 1), (row[1] as number) - 1, ...row.slice(2)], ...rows] };
    const after = print(together({ ...parts, [first]: [changed, ...tables.slice(1)] }));
    expect(after.fingerprint).not.toBe(there.fingerprint);
    const differ = after.files!.filter(({ fingerprint }, at) => fingerprint !== there.files![at]!.fingerprint);
    expect(differ.map(({ file }) => file)).toEqual([first]);
  });

  test("one file alone is read as if nothing were said of files", () => {
    const alone = oneWorkbook([{ file: "a.xlsx", workbook: bookOf(SAMPLE.tables) }]);
    expect(print(alone)).toEqual(print(WHOLE));
    expect(readRecords(alone, SETTINGS).input.every((use) => !("file" in use))).toBe(true);
  });
});
