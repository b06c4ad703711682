import { dayOf } from "../../../src/age/day";
import { reportSheets } from "../../../src/report/sheets/report-sheets";
import { findingsSheets } from "../../../src/report/sheets/findings-sheets";
import { sentencesOf } from "../../../src/report/sheets/sentences/sentences";
import type { CellValue, SheetOut } from "../../../src/workbook/sheets";
import { ageWhenMetTable, metByBandTable, skillStatusTable, smallReport } from "./fixture";

const report = smallReport();
const sheets = reportSheets(report);

test("the summary comes first, each table has a sheet, the method and the findings come last", () => {
  expect(sheets.map(({ name }) => name)).toEqual([
    "Summary",
    "Met by band, charts",
    "Met by band",
    "Age when met, charts",
    "Age when met",
    "Agreement",
    "Method",
    "Findings by rule",
    "Findings",
  ]);
});

/** By hand from the fixture: 10 + 21 of 12 + 24 child-skills have a current look, 8 + 15 of those are met. */
test("the title of met-by-band is its finding, worked out from its rows", () => {
  expect(sentencesOf(metByBandTable(), report)).toEqual([
    "12 children are followed; of the child-skills with a current look, 74.2% (23 of 31) are met",
    "Of all child-skills, 86.1% (31 of 36) have a current look.",
    "Gross motor is the area with least known: of its child-skills, 2 of 12 are out of date or not assessed.",
    "1 child-skill stands as lost or lost to confirm, of 36. A skill that was there and is gone is a reason to talk with the child's clinician without waiting.",
  ]);
  expect(textOf(named("Met by band"), 0, 0)).toMatch(/^12 children are followed/);
});

/** By hand: of one 0.99 window the upper limit 0.96 lies below 0.99; of one 0.75 age the upper limit 0.78 does not. */
test("windows of different kinds are never put together in a sentence", () => {
  const [, who, cdc] = sentencesOf(ageWhenMetTable(), report);
  expect(who).toMatch(
    /^Of 1 window whose source expects 99 in 100 .* lies below that for 1, its approximate limits included\. .*lean low/,
  );
  expect(cdc).toMatch(
    /^Of 1 age by which the source expects 75 or more in 100 .* for 0, its approximate limits included\.$/,
  );
});

/** By hand: 9 of 10 and 4 of 5 pairs agree, 13 of 15. */
test("agreement over all skills weighs every pair the same", () => {
  expect(textOf(named("Agreement"), 0, 0)).toContain("13 of 15 wrote the same result");
});

test("every window of a printed table has its basis in the same row", () => {
  const rows = valuesOf(named("Age when met"));
  const basis = rows[2]?.indexOf("Basis of the window, in short") ?? -1;
  expect(rows.slice(3, 6).map((row) => row[basis])).toEqual([
    "WHO 2006; 99 in 100 children by its close",
    "CDC/AAP 2022; 75 or more in 100 children by its close",
    "common practice, no source; its source gives no share",
  ]);
});

test("the label stands for the id in print, and rows of child-skills say so and carry no limits", () => {
  const rows = valuesOf(named("Met by band"));
  const heading = rows[2] ?? [];
  const id = heading.indexOf("Skill id");
  expect([rows[3]?.[0], rows[3]?.[id]]).toEqual(["Walks some steps alone", "GM1"]);
  expect(id).toBeGreaterThan(named("Met by band").print?.area?.right ?? Infinity);
  const all = rows[6] ?? [];
  expect([all[0], all[id]]).toEqual(["All of the area (child-skills)", "all"]);
  expect(all[heading.indexOf("Lower limit, %")]).toBeNull();
  expect(all[heading.indexOf("Share met, %")]).toBe(0.8);
});

test("a table about single children is called internal in its name, its title and its footer", () => {
  const sheet = reportSheets(smallReport({ tables: [skillStatusTable()] }))[1] as SheetOut;
  expect(sheet.name).toBe("Skill status (internal)");
  expect(textOf(sheet, 0, 0)).toBe("Internal: Where each of 1 child stands with each skill");
  expect(sheet.print?.footer).toMatch(/^INTERNAL/);
  const row = valuesOf(sheet)[3] ?? [];
  expect(row).toContain(dayOf(2026, 8, 2));
  expect(row).toContain("8.2 to 17.6 months (WHO 2006, 1st to 99th percentile; 99 in 100 children by its close)");
});

test("every chart says its message in words and its legend in patterns", () => {
  const charts = sheets.flatMap((sheet) => sheet.charts ?? []);
  expect(charts).toHaveLength(5);
  for (const chart of charts) expect(chart.altText.length).toBeGreaterThan(60);
  expect(charts[0]?.altText).toContain("speech 62.5% (15 of 24)");
  expect(new Set(charts[0]?.series.map(({ look }) => look)).size).toBe(6);
});

test("bands are drawn in the order of age, also where the first group lacks the youngest", () => {
  const table = metByBandTable();
  const young = table.rows.map((row) => [
    "River",
    ...row.map((value) => (value === "12 to <18 months" ? "0 to <3 months" : value)),
  ]);
  const rows = [...table.rows.map((row) => ["Hill", ...row]), ...young];
  const columns = [{ key: "Site", label: "Site", unit: "text" as const }, ...table.columns];
  const sheet = reportSheets(smallReport({ tables: [{ ...table, columns, rows }] }))[1] as SheetOut;
  const range = sheet.charts?.[1]?.series[0]?.x;
  expect(
    range &&
      valuesOf(sheet)
        .slice(range.top, range.bottom + 1)
        .map((row) => row[range.left]),
  ).toEqual(["0 to <3 (12)", "12 to <18 (12)"]);
});

test("a curve is drawn through the corners of its steps", () => {
  const sheet = named("Age when met, charts");
  const line = sheet.charts?.[0]?.series.find(({ look }) => look === "line");
  const column = (at: { top: number; left: number; bottom: number }) =>
    valuesOf(sheet)
      .slice(at.top, at.bottom + 1)
      .map((row) => row[at.left]);
  expect(line && column(line.x)).toEqual([9, 11, 12, 13, 15, 16]);
  expect(line && column(line.y)).toEqual([0, 0.25, 0.25, 0.75, 0.75, 0.9]);
});

test("a window without an opening is drawn as one age, not shaded", () => {
  const looks = named("Age when met, charts").charts?.map(({ series }) => series.map(({ look }) => look));
  expect(looks).toEqual([
    ["band", "line", "point"],
    ["edge", "line", "point"],
  ]);
});

test("the method sheet tells settings, rows left out by reason, decisions, bases, provenance and cautions", () => {
  const text = valuesOf(named("Method")).flat().join("\n");
  for (const part of [
    "37+0. Corrects the ages",
    "Left out: 8 exact copy; 4 after the as-of date.",
    "Two ids are one child",
    "Gestation is not recorded for 2 children",
    "CDC/AAP 2022; 75 or more in 100",
    `SHA-256 ${"0".repeat(64)}`,
    "Nothing in this workbook is a diagnosis",
    "a convention, not a theorem",
  ]) {
    expect(text).toContain(part);
  }
});

test("findings are grouped by rule first, errors before warnings before notes", () => {
  const byRule = valuesOf(named("Findings by rule"));
  expect(byRule.slice(3).map((row) => [row[0], row[1], row[3]])).toEqual([
    ["error: the row is not used", "date-after-as-of", 2],
    ["warning: used, a person should look", "outside-enrolment", 1],
    ["note: for information", "table-absent", 1],
  ]);
  expect(
    valuesOf(named("Findings"))
      .slice(3)
      .map((row) => row[3]),
  ).toEqual(["C12", "C90", "C7", "A1"]);
});

test("findings that do not fit on one sheet go on to the next", () => {
  const split = findingsSheets(report, 3);
  expect(split.map(({ name }) => name)).toEqual(["Findings by rule", "Findings", "Findings 2"]);
  expect(valuesOf(split[2] as SheetOut)[3]?.[3]).toBe("A1");
});

test("findings whose words fit their columns take one line each", () => {
  const [first] = report.findings;
  if (!first) throw new Error("the fixture has findings");
  const expected = "one result for each child, skill and day";
  const advice = "Look whether one of the results is a slip.";
  const alike = Array.from({ length: 104 }, (_, row) => ({ ...first, cell: `D${row + 2}`, expected, advice }));
  const cells = findingsSheets(smallReport({ findings: alike }))[1] as SheetOut;
  expect(cells.rows).toHaveLength(3 + 104);
  expect([...(cells.rowHeights ?? [])].filter(([row]) => row > 3)).toEqual([]);
});

test("no column that stands beside the printed ones is lost, and the notes name it", () => {
  const sheet = named("Age when met");
  const beside = (valuesOf(sheet)[2] ?? []).slice((sheet.print?.area?.right ?? 0) + 1);
  expect(beside).toEqual(expect.arrayContaining(["Skill id", "Method"]));
  const notes = valuesOf(sheet).map(([first]) => String(first ?? ""));
  expect(notes).toContain(`On the sheet, right of what is printed: ${beside.join("; ")}.`);
});

test("a report without children or findings still says so in whole sentences", () => {
  const empty = { ...metByBandTable(), rows: [] };
  const print = { ...report.print, followed: 0, curves: [] };
  const out = reportSheets(smallReport({ tables: [empty], findings: [], print }));
  expect(out.map(({ name }) => name)).toEqual(["Summary", "Met by band", "Method", "Findings by rule", "Findings"]);
  expect(textOf(out[1] as SheetOut, 0, 0)).toBe(
    "Children who have met each skill, by age band: there is nobody to count",
  );
  expect(textOf(out[3] as SheetOut, 0, 0)).toBe("No findings: every row could be read and used");
});

function named(name: string): SheetOut {
  const sheet = sheets.find((each) => each.name === name);
  if (!sheet) throw new Error(`no sheet ${name}`);
  return sheet;
}

function valuesOf(sheet: SheetOut): CellValue[][] {
  return sheet.rows.map((row) => row.map((cell) => (typeof cell === "object" && cell !== null ? cell.value : cell)));
}

function textOf(sheet: SheetOut, row: number, column: number): string {
  return String(valuesOf(sheet)[row]?.[column] ?? "");
}
