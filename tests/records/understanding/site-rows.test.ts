import { applyChoice } from "../../../src/records/understanding/choices";
import { fromFile, toFile } from "../../../src/records/understanding/file";
import { understand } from "../../../src/records/understanding/understand";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { book, read, sheet, SKILLS } from "../book";

/** Confirmed as it is guessed, and read from the file that was kept. */
function confirmed(workbook: WorkbookIn) {
  const found = understand(workbook);
  const settled = applyChoice(found, { kind: "confirm" });
  const file = fromFile(JSON.parse(JSON.stringify(toFile(settled))));
  if ("messages" in file) throw new Error(file.messages.join(" "));
  return { found, settled, records: read(workbook, {}, [...file.decisions]), again: understand(workbook, file) };
}

const CHECKS = sheet("Checks", [
  ["Child", "Skill", "Date", "Result"],
  ["A1", "sits", "2026-08-15", "Y"],
  ["B1", "sits", "2026-08-15", "N"],
]);

test("rows with a site's name above its children are offered as Site, and are no children", () => {
  const roster = sheet("Roster", [
    ["Child", "Birth date", "Enrolled"],
    ["Maple House"],
    ["A1", "2024-03-14", "2024-06-01"],
    ["A2", "2024-04-20", "2024-07-01"],
    ["Oak House"],
    ["B1", "2024-12-15", "2025-03-01"],
  ]);
  const { found, records, settled, again } = confirmed(book([roster, CHECKS, sheet("List", SKILLS)]));
  expect(found.sheets[0]?.headings.at(-1)).toMatchObject({
    heading: "(title above the rows)",
    means: "Site",
    cells: 2,
    doubtful: true,
  });
  expect(found.missing.map(({ column }) => column)).not.toContain("Site");
  expect(records.input[0]).toMatchObject({ table: "Children", rows: 3, used: 3 });
  expect(records.enrolments.columns.find(({ heading }) => heading === "Site")?.values).toEqual([
    "Maple House",
    "Maple House",
    "Oak House",
  ]);
  expect(toFile(again)).toEqual(toFile(settled));
});

test("one sheet per child is read by its name, below whatever stands above its checks", () => {
  const roster = sheet("All", [
    ["Child", "Birth date"],
    ["Kid 1", "2024-03-14"],
    ["Kid 2", "2024-04-20"],
  ]);
  const own = (name: string, result: string) =>
    sheet(name, [
      ["Room:", "Maple"],
      [],
      ["Skill", "Date", "Result"],
      ["sits", "2026-06-15", "N"],
      ["sits", "2026-08-15", result],
    ]);
  const { found, records, settled, again } = confirmed(
    book([roster, own("Kid 1", "Y"), own("Kid 2", "N"), sheet("List", SKILLS)]),
  );
  expect(found.sheets.map(({ is }) => is)).toEqual(["children", "observations", "observations", "skills"]);
  expect(Array.from(records.observations.child)).toEqual([0, 0, 1, 1]);
  expect(records.input.filter(({ table }) => table === "Observations").map(({ used }) => used)).toEqual([2, 2]);
  expect(toFile(again)).toEqual(toFile(settled));
});

test("forms of one child each, without a list of children, say what to do", () => {
  const form = (name: string) =>
    sheet(name, [
      ["Child:", name],
      ["Born:", "2024-03-14"],
      ["Skill", "Date", "Result"],
      ["sits", "2026-08-15", "Y"],
    ]);
  const { sheets } = understand(book([form("Kid 1"), form("Kid 2")]));
  for (const { why, doubtful } of sheets) {
    expect(why).toMatch(/^It looks like the sheet of one child\. Add a sheet with one row per child/);
    expect(doubtful).toBe(true);
  }
});

test("short sheets of one child each are counted together where there is no list of skills", () => {
  const kids = ["Kid 1", "Kid 2", "Kid 3", "Kid 4"];
  const roster = sheet("All", [["Child", "Birth date"], ...kids.map((name) => [name, "2024-03-14"])]);
  const own = (name: string) =>
    sheet(name, [
      ["Skill", "Date", "Result"],
      ["sits", "2026-06-15", "N"],
      ["walks", "2026-08-15", "N"],
    ]);
  const found = understand(book([roster, ...kids.map(own)]));
  expect(found.skills.map(({ skill }) => skill)).toEqual(["sits", "walks"]);
});
