/** The rows behind a figure, listed by hand from the rows below: row 2 is the first of the sheet. */
import { readRecords } from "../../src/records/read-records";
import type { Figure } from "../../src/tables/definition-check/figure";
import { rowsBehind } from "../../src/tables/rows-behind";
import { asWorkbook } from "../oracle/as-workbook";
import { child, look, program, skill } from "../oracle/programs";
import { settingsFor } from "../support/oracle-settings";

const CHILDREN = [
  child("A", "2023-06-10"),
  child("B", "2023-06-10", { site: "South" }),
  // too young for the window of any skill to have closed
  child("Young", "2024-03-01"),
  // left before the day
  child("Gone", "2023-06-10", { left: "2024-05-01" }),
];
const CHECKS = [
  look("A", "2024-01-10", "not met", { skill: "crawls" }),
  look("A", "2024-05-10", "met", { skill: "walks" }),
  look("B", "2024-02-10", "met", { skill: "crawls" }),
  look("Young", "2024-06-01", "not met", { skill: "crawls" }),
  look("Gone", "2024-04-01", "met", { skill: "crawls" }),
  look("A", "2024-07-10", "met", { skill: "crawls" }),
  look("B", "2024-02-10", "met", { skill: "points" }),
];
const SKILLS = [
  skill("crawls", { closes: 10 }),
  skill("walks", { closes: 18, follows: "crawls" }),
  skill("points", { area: "speech", closes: 12 }),
];

function cellsBehind(figure: Partial<Figure>, by: readonly string[] = []): { children: number; cells: string[] } {
  const input = program(CHILDREN, CHECKS, { skills: SKILLS, settings: { by } });
  const settings = settingsFor(input.settings);
  const whole = { groups: [], area: null, band: null, kind: null, ...figure } as Figure;
  const { children, cells } = rowsBehind(readRecords(asWorkbook(input), settings), settings, whole);
  return { children, cells: cells.map(({ sheet, cell }) => `${sheet}!${cell}`) };
}

test("expected by now: the children in the program whose window closed, with checks of the skill that replaces it", () => {
  const figure = { table: "expected-by-now", skill: "all", area: "gross motor", kind: "none" } as const;
  expect(cellsBehind(figure)).toEqual({
    children: 2,
    cells: ["Observations!D2", "Observations!D3", "Observations!D4"],
  });
});

test("age when met: every child ever in the program, of one group where there are groups", () => {
  const figure = { table: "age-when-met", skill: "crawls", column: "p50" } as const;
  expect(cellsBehind(figure)).toEqual({
    children: 4,
    cells: ["Observations!D2", "Observations!D3", "Observations!D4", "Observations!D5", "Observations!D6"],
  });
  expect(cellsBehind({ ...figure, groups: ["South"] }, ["Site"])).toEqual({ children: 1, cells: ["Observations!D4"] });
});
