import { dayOf } from "../../../src/age/day";
import { dataSheets } from "../../../src/report/sheets/data-sheets";
import { findingsSheets } from "../../../src/report/sheets/findings-sheets";
import { sentencesOf } from "../../../src/report/sheets/sentences/sentences";
import type { CellOut, CellValue, SheetOut } from "../../../src/workbook/sheets";
import { ageWhenMetTable, metByBandTable, skillStatusTable, smallReport } from "./fixture";

const report = smallReport();
const sheets = dataSheets(report);

test("each table has a sheet, then come the method and the problems found", () => {
  expect(sheets.map(({ name }) => name)).toEqual([
    ...["Met by age group", "Age when met", "Agreement", "Method", "Problems by rule", "Problems found"],
  ]);
  for (const { charts } of sheets) expect(charts ?? []).toEqual([]);
});

/** By hand from the fixture: of 12 + 24 skills 10 + 21 have an up-to-date check, 8 + 15 of those are met. */
test("the title of met-by-band is its finding, worked out from its rows", () => {
  expect(sentencesOf(metByBandTable(), report)).toEqual([
    "Of 31 up-to-date skill checks, 23 (74%) were met",
    "12 children in the program on September 30, 2026. Another 5 skills were not checked or need a recheck.",
    "Least is known in gross motor: 2 of 12 skills were not checked or need a recheck.",
    "1 skill is lost or possibly lost. Talk with the child's clinician without waiting.",
  ]);
  expect(textOf(named("Met by age group"), 0, 0)).toBe("Of 31 up-to-date skill checks, 23 (74%) were met");
});

/** By hand: of one 0.99 window the upper limit 0.96 is below 0.99; of one 0.75 age the upper limit 0.78 is not. */
test("windows of different kinds are never put together in a sentence", () => {
  const [, who, cdc] = sentencesOf(ageWhenMetTable(), report);
  expect(who).toMatch(/^Of 1 window whose source expects 99 in 100 .*, 1 has a lower share here.* too low\./);
  expect(cdc).toMatch(/^Of 1 age by which the source expects 75 or more in 100 .*, 0 have a lower share here/);
});

/** By hand: 9 of 10 and 4 of 5 pairs agree, 13 of 15. */
test("agreement over all skills weighs every pair the same", () => {
  expect(textOf(named("Agreement"), 0, 0)).toContain("13 of 15 recorded the same result");
});

test("every window of a table has its basis in the same row", () => {
  const rows = valuesOf(named("Age when met"));
  const basis = rows[2]?.indexOf("Basis of the window, in short") ?? -1;
  expect(rows.slice(3, 6).map((row) => row[basis])).toEqual([
    "WHO 2006; 99 in 100 children by its close",
    "CDC/AAP 2022; 75 or more in 100 children by its close",
    "common practice, no source; its source gives no share",
  ]);
});

test("the label is printed for the id, and rows of skill checks say so and have no interval", () => {
  const rows = valuesOf(named("Met by age group"));
  const heading = rows[2] ?? [];
  const id = heading.indexOf("Skill id");
  expect([rows[3]?.[0], rows[3]?.[id]]).toEqual(["Walks some steps alone", "GM1"]);
  expect(id).toBeGreaterThan(named("Met by age group").print?.area?.right ?? Infinity);
  const all = rows[6] ?? [];
  expect([all[0], all[id]]).toEqual(["All of the area (skill checks)", "all"]);
  expect(all[heading.findIndex((each) => /^Lower/.test(String(each)))]).toBeNull();
  expect(all[heading.indexOf("Share met, %")]).toBe(0.8);
});

test("a skill is named once: the same words in the rows below are pale, and still there to sort by", () => {
  const table = metByBandTable();
  const [first] = table.rows;
  const again = {
    ...table,
    rows: [first ?? [], (first ?? []).map((value, at) => (at === 2 ? "18 to <24 months" : value))],
  };
  const [sheet] = dataSheets(smallReport({ tables: [again] }));
  const labels = (sheet?.rows ?? []).slice(3, 5).map((row) => row[0] as CellOut);
  expect(labels).toEqual(["Walks some steps alone", { value: "Walks some steps alone", style: "repeated" }]);
});

test("a table about single children is called internal in its name, its title and its footer", () => {
  const sheet = dataSheets(smallReport({ tables: [skillStatusTable()] }))[0] as SheetOut;
  expect(sheet.name).toBe("Skill status (internal)");
  expect(textOf(sheet, 0, 0)).toBe("Internal: Each skill of 1 child");
  expect(sheet.print?.footer).toMatch(/^INTERNAL/);
  const row = valuesOf(sheet)[3] ?? [];
  expect(row).toContain(dayOf(2026, 8, 2));
  expect(row).toContain("8.2 to 17.6 months (WHO 2006, 1st to 99th percentile; 99 in 100 children by its close)");
});

test("the method sheet has settings, rows left out by reason, corrections, bases, how to make it again, and cautions", () => {
  const text = valuesOf(named("Method")).flat().join("\n");
  for (const part of [
    "37+0. Corrects the ages",
    "Left out: exact copy (8); after the as-of date (4).",
    "Two ids are one child",
    "Gestation is not recorded for 2 children",
    "CDC/AAP 2022; 75 or more in 100",
    `SHA-256 ${"0".repeat(64)}`,
    "These figures describe a program, not a diagnosis",
    "a convention, not a theorem",
  ]) {
    expect(text).toContain(part);
  }
});

test("problems are grouped by rule first, those to fix before those to check", () => {
  const byRule = valuesOf(named("Problems by rule"));
  expect(byRule[0]?.[0]).toBe("Problems found: 2 cells to fix, 1 cell to check and 1 for information");
  expect(byRule.slice(3).map((row) => [row[0], row[1], row[3]])).toEqual([
    ["to fix: the row is not used", "date-after-as-of", 2],
    ["to check: used as it is", "outside-enrolment", 1],
    ["for information", "table-absent", 1],
  ]);
  expect(
    valuesOf(named("Problems found"))
      .slice(3)
      .map((row) => row[3]),
  ).toEqual(["C12", "C90", "C7", "A1"]);
});

test("problems that do not fit on one sheet go on to the next", () => {
  const split = findingsSheets(report, 3);
  expect(split.map(({ name }) => name)).toEqual(["Problems by rule", "Problems found", "Problems found 2"]);
  expect(valuesOf(split[2] as SheetOut)[3]?.[3]).toBe("A1");
});

test("problems whose words fit their columns take one line each", () => {
  const [first] = report.findings;
  if (!first) throw new Error("the fixture has findings");
  const expected = "one result for each child, skill and day";
  const advice = "Check whether one of the results is a slip.";
  const alike = Array.from({ length: 104 }, (_, row) => ({ ...first, cell: `D${row + 2}`, expected, advice }));
  const cells = findingsSheets(smallReport({ findings: alike }))[1] as SheetOut;
  expect(cells.rows).toHaveLength(3 + 104);
  expect([...(cells.rowHeights ?? [])].filter(([row]) => row > 3)).toEqual([]);
});

test("no column that is beside the printed ones is lost, and the notes name it", () => {
  const sheet = named("Age when met");
  const beside = (valuesOf(sheet)[2] ?? []).slice((sheet.print?.area?.right ?? 0) + 1);
  expect(beside).toEqual(expect.arrayContaining(["Skill id", "Method"]));
  const notes = valuesOf(sheet).map(([first]) => String(first ?? ""));
  expect(notes).toContain(`On the sheet, right of what is printed: ${beside.join("; ")}.`);
});

test("a table without rows, and a run without problems, say so in whole sentences", () => {
  const empty = { ...metByBandTable(), rows: [] };
  const out = dataSheets(smallReport({ tables: [empty], findings: [] }));
  expect(textOf(out[0] as SheetOut, 0, 0)).toBe("Children who have met each skill, by age group: no child to count");
  expect(textOf(out[2] as SheetOut, 0, 0)).toBe("No problems found: every row could be read and used");
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
