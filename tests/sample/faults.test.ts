import { serialOf } from "../../src/age/serial";
import { dayOf } from "../../src/age/day";
import type { Finding } from "../../src/records/findings/finding";
import { readRecords } from "../../src/records/read-records";
import { RESULT } from "../../src/records/records";
import { ruleOf } from "../../src/records/findings/rules";
import { makeSample, type PlantedFault, type Sample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { usualSettings } from "../../src/settings/settings";
import { asRead } from "./as-read";

const LAST = dayOf(2026, 9, 30);
const settings = { ...usualSettings, asOf: LAST, from: dayOf(2026, 7, 1) };
const read = (sample: Sample) => readRecords(asRead(sampleSheets(sample)), settings);

const clean = makeSample({ children: 240, seed: 7 });
const cleanRecords = read(clean);
const faulty = makeSample({ children: 60, seed: 7, defects: true });
const records = read(faulty);
const planted = faulty.truth.faults;
const place = ({ sheet, cell, rule }: Finding | PlantedFault): string => `${sheet}!${cell} ${rule}`;

test("the clean workbook: every row is used, and observers who disagree are all that is said", () => {
  for (const { rows, used } of cleanRecords.input) expect(used).toBe(rows);
  expect([...new Set(cleanRecords.findings.map((finding) => finding.rule))]).toEqual(["results-differ"]);
});

test("the clean workbook: as many disagreements as plain counting finds", () => {
  const days = new Map<string, Set<unknown>>();
  for (const [child, skill, day, result] of clean.tables.find((each) => each.name === "Observations")?.rows ?? []) {
    const key = `${child} ${skill} ${day}`;
    days.set(key, (days.get(key) ?? new Set()).add(result));
  }
  expect(cleanRecords.findings.length).toBe([...days.values()].filter((results) => results.size > 1).length);
});

test("the other seeds too leave no error in a clean workbook", () => {
  for (const seed of [1, 2, 3]) {
    const findings = read(makeSample({ children: 40, seed })).findings;
    expect(findings.filter((finding) => finding.severity === "error")).toEqual([]);
  }
});

test.each(planted.filter((fault) => fault.rule !== null))("$sheet $cell: $kind, found as $rule", (fault) => {
  expect(records.findings.map(place)).toContain(place(fault));
});

test.each(planted.filter((fault) => fault.rule === null))("$sheet $cell: $kind, read without a word", (fault) => {
  expect(records.findings.filter(({ sheet, cell }) => sheet === fault.sheet && cell === fault.cell)).toEqual([]);
});

test("nothing is found that was not planted, and nothing twice", () => {
  const expected = new Set(planted.map(place));
  expect(records.findings.map(place).filter((each) => !expected.has(each))).toEqual([]);
  expect(new Set(records.findings.map(place)).size).toBe(records.findings.length);
});

test.each([
  [1, 1, dayOf(2026, 9, 30)],
  [12, 2, dayOf(2025, 2, 28)],
  [150, 3, dayOf(2024, 12, 31)],
])("the same holds for %i children, seed %i, another last day", (children, seed, endDate) => {
  const sample = makeSample({ children, seed, endDate, defects: true });
  const found = readRecords(asRead(sampleSheets(sample)), { ...settings, asOf: endDate }).findings.map(place);
  const expected = sample.truth.faults.filter((fault) => fault.rule !== null).map(place);
  expect([...found].sort()).toEqual([...expected].sort());
});

test("an error leaves its row out, a warning or a note does not", () => {
  const columnWide = "date-column-swapped";
  const errors = records.findings.filter((finding) => finding.severity === "error" && finding.rule !== columnWide);
  const rows = new Set(errors.map(({ sheet, cell }) => `${sheet} ${cell.replace(/^[A-Z]+/, "")}`));
  const leftOut = records.input.flatMap((use) => Object.values(use.leftOut)).reduce((sum, count) => sum + count, 0);
  expect(leftOut).toBe(rows.size);
  for (const { rows: all, used, leftOut: reasons } of records.input) {
    expect(used + Object.values(reasons).reduce((sum, count) => sum + count, 0)).toBe(all);
  }
  for (const fault of planted) if (fault.rule !== null) expect(ruleOf(fault.rule).id).toBe(fault.rule);
});

test("ids in other clothes are the same child", () => {
  expect(looksOf("AF-9004")).toBe(3);
  expect(looksOf("9003")).toBe(1);
  expect(records.children.ids.filter((id) => /9004|９/.test(id))).toEqual(["AF-9004"]);
});

test("a hostile heading is a further column, and text that starts like a formula stays text", () => {
  const column = records.enrolments.columns.find(({ heading }) => heading === "__proto__");
  expect(column?.values).toContain("=1+1");
  expect(records.observations.observers).toContain("=T01");
  expect(Object.prototype).not.toHaveProperty("L1");
});

test("signs dated as text fall on the days that were meant", () => {
  const meant = faulty.tables.find((each) => each.name === "Signs")?.rows.map((row) => row[1]) ?? [];
  const host = records.children.ids.indexOf("AF-9001");
  const days = [...(records.signs?.day ?? [])].filter((_, index) => records.signs?.child[index] !== host);
  expect(days).toEqual(meant);
});

test("the wide sheet adds its three looks, all of them met", () => {
  const days = [LAST - 120, LAST - 60, LAST - 90];
  const { day, result, observer } = records.observations;
  const wide = [...day.keys()].slice(-3);
  expect(wide.map((at) => day[at]).sort()).toEqual(days.sort());
  expect(wide.every((at) => result[at] === RESULT.met && observer[at] === -1)).toBe(true);
});

test("the gestation that became a date is a true date cell", () => {
  const sheet = sampleSheets(faulty).find(({ name }) => name === "Children");
  const cells = sheet?.rows.flatMap((row) => row.filter((cell) => typeof cell === "object" && cell !== null)) ?? [];
  expect(cells).toEqual([{ value: dayOf(2026, 3, 28), format: "date" }]);
  expect(serialOf(dayOf(2026, 3, 28), 1900)).toBe(46109);
});

test("no finding says what stands in a cell of Children or Observations", () => {
  const said = JSON.stringify(records.findings);
  for (const text of ["AF-9", "52+0", "running about", "soon after lunch", "N/O"]) expect(said).not.toContain(text);
});

function looksOf(id: string): number {
  const child = records.children.ids.indexOf(id);
  return records.observations.child.filter((each) => each === child).length;
}
