import { applyChoice } from "../../../src/records/understanding/choices";
import { decisionsOf, fromFile, toFile } from "../../../src/records/understanding/file";
import { understand } from "../../../src/records/understanding/understand";
import { openQuestions } from "../../../src/records/understanding/understanding";
import { SHEET_DAY } from "../../../src/records/corrections/settled";
import { book, read, sheet } from "../book";

const KIDS = sheet("Kids", [
  ["Child", "Birth date", "Enrolled"],
  ["A1", "2025-03-01", "2025-06-01"],
  ["A2", "2025-04-01", "2025-06-01"],
  ["A3", "2025-05-01", "2025-07-01"],
]);
const checks = (name: string, title: string) =>
  sheet(name, [[title], ["Child", "Rolls over", "Sits alone"], ["A1", "Y", "N"], ["A2", "Y", "N"], ["A3", "N", "N"]]);
const dayIn = (title: string, name = "Checks") => {
  const found = understand(book([KIDS, checks(name, title)]));
  return found.sheets[1]?.headings.find(({ heading }) => heading === SHEET_DAY)?.means;
};

test.each([
  ["Checked 2026-03-20", "2026-03-20"],
  ["Quarterly check, done 3/20/2026", "2026-03-20"],
  ["checks of March 20, 2026", "2026-03-20"],
  ["20 March 2026", "2026-03-20"],
  // Either number may be the month.
  ["done 3/4/2026", null],
  // Two days: which one?
  ["3/20/2026 to 3/25/2026", null],
  ["Spring checks", null],
])("the title %p says the day %p", (title, day) => expect(dayIn(title)).toBe(day));

test("a day in the name of the sheet is one too, and a month alone is none", () => {
  expect(dayIn("Checks", "2026-03-20")).toBe("2026-03-20");
  expect(dayIn("Checks", "Mar 2026")).toBeNull();
});

test("without a day the sheet stays an open question, and its cells are listed until the day is given", () => {
  const workbook = book([KIDS, checks("Checks", "Spring checks")]);
  const found = applyChoice(understand(workbook), { kind: "confirm" });
  expect(openQuestions(found)).toEqual({ doubtful: 0, unsettled: 1 });
  const settled = applyChoice(found, { kind: "heading", key: "Checks#2", cell: "", means: "2026-03-20" });
  expect(openQuestions(settled)).toEqual({ doubtful: 0, unsettled: 0 });
  const records = read(workbook, {}, decisionsOf(settled));
  expect(records.input[1]).toMatchObject({ rows: 6, used: 6 });
});

test("next quarter's sheet never takes over the day of the last one", () => {
  const before = applyChoice(understand(book([KIDS, checks("Q1", "done 3/20/2026")])), { kind: "confirm" });
  const saved = { settings: {}, decisions: decisionsOf(before) };
  const renamed = book([KIDS, checks("Q2", "done 6/19/2026")]);
  const found = understand(renamed, saved);
  expect(found.sheets[1]?.headings.at(-1)).toMatchObject({ heading: SHEET_DAY, means: "2026-06-19", doubtful: true });
  expect(() => read(renamed, {}, saved.decisions)).toThrow(/result without a date: 6/);
  const same = book([KIDS, checks("Q1", "done 6/19/2026")]);
  expect(understand(same, saved).sheets[1]).toMatchObject({
    doubtful: true,
    why: expect.stringMatching(/now says 2026-06-19/),
  });
  expect(read(same, {}, saved.decisions).findings).toContainEqual(
    expect.objectContaining({ rule: "day-in-title", severity: "warning", cell: "A2:C2" }),
  );
});

test("a day that is none is refused by its place", () => {
  const found = understand(book([KIDS, checks("Checks", "Spring")]));
  const given = applyChoice(found, { kind: "heading", key: "Checks#2", cell: "", means: "spring" });
  expect(fromFile(toFile(given))).toEqual({
    messages: [`sheets 2, headings 4: means of "${SHEET_DAY}" must be a day such as 2026-09-30.`],
  });
});

test("children across the top: the sheet says how to turn it, and shows no id", () => {
  const turned = sheet("By child", [
    ["Skill", "Area", "A1", "A2", "A3"],
    ["Rolls over", "gross motor", "Y", "Y", "N"],
    ["Sits alone", "gross motor", "N", "Y", "N"],
  ]);
  const found = understand(book([KIDS, turned]));
  expect(found.sheets[1]).toMatchObject({ is: "not used", doubtful: true, headings: [] });
  expect(found.sheets[1]?.why).toMatch(/one row per child: copy the table, paste it turned/);
  expect(JSON.stringify(found)).not.toContain('A2"');
});

test("a sheet that a person said is a grid is no other table with headings missing", () => {
  const grid = sheet("Skills grid", [
    ["Child", "Visit date", "Rolls over", "Sits alone"],
    ["A1", "2025-09-01", "Y", "N"],
    ["A2", "2025-09-01", "Y", "N"],
    ["A3", "2025-10-01", "N", "N"],
  ]);
  const workbook = book([KIDS, grid]);
  const settled = applyChoice(understand(workbook), { kind: "confirm" });
  const { findings, input } = read(workbook, {}, decisionsOf(settled));
  expect(input[1]).toMatchObject({ table: "Observations", rows: 6, used: 6 });
  expect(findings.filter(({ rule }) => rule === "heading-unknown")).toEqual([]);
});
