import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import ExcelJS from "exceljs";
import { BOOK, temporaryFolder, windowline } from "../support/windowline";

const folder = temporaryFolder();
const at = (name: string) => path.join(folder, name);
const DAY = new Date("2026-09-01T00:00:00Z");

/** Two children under everyday headings, one grid of skills of their own. */
async function smallBook(file: string): Promise<void> {
  const workbook = new ExcelJS.Workbook();
  const kids = workbook.addWorksheet("Kids");
  kids.addRows([
    ["Kid #", "Born on", "Intake", "Exit", "Phone"],
    ["K1", new Date("2025-10-01T00:00:00Z"), new Date("2026-01-05T00:00:00Z"), null, "555-0101"],
    ["K2", new Date("2025-09-01T00:00:00Z"), new Date("2026-01-06T00:00:00Z"), null, "555-0102"],
  ]);
  const motor = workbook.addWorksheet("Motor");
  motor.addRows([
    ["Kid #", "Visit", "Rolls over", "Sits alone"],
    ["K1", DAY, "Y", "E"],
    ["K2", DAY, "Y", "N"],
  ]);
  writeFileSync(file, new Uint8Array(await workbook.xlsx.writeBuffer()));
}

beforeAll(() => smallBook(at("own.xlsx")));

test("shows how a workbook is taken, writes it as a file, and reads by that file", () => {
  const shown = windowline(["understand", at("own.xlsx"), "--out", at("own.json")]);
  expect([shown.status, shown.stderr]).toEqual([0, ""]);
  expect(shown.stdout).toMatch(/Kids: children, headings in row 1, 2 rows/);
  expect(shown.stdout).toMatch(/"E", 1 cell|Motor: grid/);
  expect(shown.stdout).not.toContain("555-");
  const file = JSON.parse(readFileSync(at("own.json"), "utf8"));
  expect(file).toMatchObject({
    windowline: 1,
    sheets: [
      { sheet: "Kids", is: "children" },
      { sheet: "Motor", is: "grid" },
    ],
  });
  const settled = { ...file, words: [{ word: "E", means: "emerging" }] };
  writeFileSync(at("settled.json"), JSON.stringify(settled));
  const words = [
    "report",
    at("own.xlsx"),
    "--as-of",
    "2026-09-30",
    "--tables",
    "met-by-band",
    "--json",
    at("own-report.json"),
  ];
  const made = windowline([...words, "--understanding", at("settled.json")]);
  expect(made.status).toBe(0);
  const { input } = JSON.parse(readFileSync(at("own-report.json"), "utf8"));
  // By hand: 2 children, 4 filled cells of the grid.
  expect(input.map(({ table, rows, used }: Record<string, unknown>) => [table, rows, used])).toEqual([
    ["Children", 2, 2],
    ["Observations", 4, 4],
  ]);
});

test("a file that may hold what a person settled is not written over", () => {
  const again = windowline(["understand", at("own.xlsx"), "--out", at("settled.json")]);
  expect(again.status).toBe(2);
  expect(again.stderr).toMatch(/may have what you settled\. Give it with --understanding/);
  expect(JSON.parse(readFileSync(at("settled.json"), "utf8")).words).toEqual([{ word: "E", means: "emerging" }]);
});

test.each([["understand"], ["check"], ["report"]])("%s refuses a file that is about another workbook", (command) => {
  const words = command === "report" ? ["--as-of", "2026-09-30", "--out", at("none.xlsx")] : [];
  const { status, stdout, stderr } = windowline([command, BOOK, "--understanding", at("settled.json"), ...words]);
  expect([status, stdout]).toEqual([2, ""]);
  expect(stderr).toMatch(/about another workbook: none of its sheets is here\. Make one for this workbook/);
});

test("a workbook that cannot be read by its headings alone is never said to be without problems", () => {
  const { status, stdout, stderr } = windowline(["check", at("own.xlsx")]);
  expect(status).toBe(3);
  expect(stdout).not.toMatch(/No problems/);
  expect(stderr).toMatch(/windowline understand BOOK\.xlsx --out/);
});
