import { isoOf } from "../../../src/age/day";
import { applyChoice } from "../../../src/records/understanding/choices";
import { fromFile, toFile } from "../../../src/records/understanding/file";
import type { Understanding } from "../../../src/records/understanding/understanding";
import { understand } from "../../../src/records/understanding/understand";
import { book, read, sheet, SKILLS } from "../book";

const WORKBOOK = book([
  sheet("Roster", [
    ["Child", "Birthday", "Start"],
    ["A1", "3/14/24", "6/1/24"],
    ["A2", "12/5/24", "3/15/25"],
    ["A3", "2/2/25", "2025-06-17"],
  ]),
  sheet("Checks", [
    ["Child", "Day", "Skill", "How"],
    ["A1", "8/15/26", "sits", "Y"],
    ["A1", "8/16/26", "walks", "N"],
    ["A2", "8/20/26", "sits", "Y"],
    ["A3", "8/20/26", "sits", "N"],
  ]),
  sheet("List", SKILLS),
]);
const UNDERSTOOD = understand(WORKBOOK);

const recordsOf = (settled: Understanding) => {
  const file = fromFile(JSON.parse(JSON.stringify(toFile(settled))));
  if ("messages" in file) throw new Error(file.messages.join(" "));
  return { records: read(WORKBOOK, {}, [...file.decisions]), again: understand(WORKBOOK, file) };
};

test("years of two digits are asked once, with their count, and read so once confirmed", () => {
  expect(UNDERSTOOD.shortYears).toEqual({
    cells: 9,
    headings: ["Birthday", "Start", "Day"],
    means: "2000 to 2099",
    doubtful: true,
  });
  const { records, again } = recordsOf(applyChoice(UNDERSTOOD, { kind: "confirm" }));
  expect([...records.children.birth].map(isoOf)).toEqual(["2024-03-14", "2024-12-05", "2025-02-02"]);
  expect(records.observations.day).toHaveLength(4);
  expect(records.decisions.at(-1)).toMatch(/^Years of two digits are read as 2000 to 2099 \(correction/);
  expect(again.shortYears).toMatchObject({ means: "2000 to 2099", doubtful: false });
});

test("they can be left out, which is kept too", () => {
  const left = applyChoice(applyChoice(UNDERSTOOD, { kind: "confirm" }), {
    kind: "two-digit years",
    means: "leave out",
  });
  const file = fromFile(JSON.parse(JSON.stringify(toFile(left))));
  expect("messages" in file ? [] : understand(WORKBOOK, file).shortYears).toMatchObject({
    means: "leave out",
    doubtful: false,
  });
});

test("a long list whose results stand under a heading of one's own is no grid", () => {
  const checks = UNDERSTOOD.sheets.find((each) => each.sheet === "Checks");
  expect([checks?.is, ...(checks?.headings ?? []).map(({ means }) => means)]).toEqual([
    "observations",
    "Child",
    "Date",
    "Skill",
    "Result",
  ]);
});
