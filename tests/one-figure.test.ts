/**
 * One figure everywhere: the same quarter through the command line, Excel (the real office.js over a workbook in memory), the
 * embedded page and the METBYBAND function, compared cell by cell.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { FUNCTIONS } from "../functions/registry";
import { readWorkbook } from "../src/hosts/file/read-workbook";
import { PageWorkbook } from "../src/hosts/page/page-workbook";
import { reportOf } from "./support/report-of";
import { dataSheets } from "../src/report/sheets/data-sheets";
import { makeSample } from "../src/sample/make-sample";
import { sampleSheets } from "../src/sample/sample-sheets";
import { parseSettings } from "../src/settings/settings";
import type { Table } from "../src/tables/table";
import { kindAt, CELL, numberAt, stringAt } from "../src/workbook/cells";
import type { WorkbookHost } from "../src/workbook/host";
import type { WorkbookIn } from "../src/workbook/workbook";
import { bookOf, hasty, job } from "./hosts/excel/support";
import { MemoryGrid } from "./hosts/page/memory-grid";
import { startOffice } from "./office/in-node";
import { openInOffice } from "./office/office-globals";
import { temporaryFolder, windowline } from "./support/windowline";

const AS_OF = "2026-09-30";
const TABLES = [
  "met-by-band",
  "reached-by-age",
  "age-when-met",
  "since-enrollment",
  "agreement",
  "skill-status",
] as const;
const SAMPLE = { children: 30, seed: 11 };
const folder = temporaryFolder();
const book = path.join(folder, "book.xlsx");

let commandLine: Table[];
let file: WorkbookIn;

beforeAll(async () => {
  await startOffice();
  const { children, seed } = SAMPLE;
  windowline(["sample", "--children", String(children), "--seed", String(seed), "--out", book]);
  const json = path.join(folder, "report.json");
  windowline(["report", book, "--as-of", AS_OF, "--tables", TABLES.join(","), "--json", json]);
  commandLine = JSON.parse(readFileSync(json, "utf8")).tables;
  file = await readWorkbook(new Uint8Array(readFileSync(book)));
}, 60_000);

test("Excel finds what the command line finds", async () => {
  openInOffice(bookOf(sampleSheets(makeSample(SAMPLE))));
  expect(await tablesThrough(hasty())).toEqual(commandLine);
}, 60_000);

test("the embedded page finds what the command line finds", async () => {
  const page = await PageWorkbook.open(new MemoryGrid().asPageGrid(), { name: "book.xlsx", workbook: file }, job());
  expect(await tablesThrough(page)).toEqual(commandLine);
}, 60_000);

test("METBYBAND finds what the command line finds", () => {
  const table = commandLine.find(({ id }) => id === "met-by-band")!;
  const ranges = ["Children", "Observations", "Skills"].map(cellsOf);
  const [headings, ...rows] = FUNCTIONS.get("METBYBAND")!.fn(...ranges, AS_OF, null, null) as unknown[][];
  expect(headings).toEqual(table.columns.map(({ label }) => label));
  expect(rows.length).toBe(table.rows.length);
  table.rows.forEach((row, at) =>
    row.forEach((value, column) => {
      if (value !== null) expect(asWritten(rows[at]?.[column])).toBe(value);
    }),
  );
});

test.each(TABLES)("the sheet of %s has each number in its row, under its own heading", (id) => {
  const table = commandLine.find((each) => each.id === id)!;
  const sheet = dataSheets(ownReport(file))[TABLES.indexOf(id)]!;
  const { top, bottom } = sheet.tables![0]!.range;
  const shown = (row: number, column: number) => {
    const cell = sheet.rows[row]?.[column] ?? null;
    return asWritten((typeof cell === "object" ? cell?.value : cell) ?? null);
  };
  expect(bottom - top).toBe(table.rows.length);
  const headings = sheet.rows[top]!.map((_, at) => String(shown(top, at)));
  for (const [at, { label }] of table.columns.entries()) {
    if (!table.rows.some((row) => typeof row[at] === "number")) continue;
    const exact = headings.indexOf(label);
    const column = exact >= 0 ? exact : headings.findIndex((heading) => heading.startsWith(label));
    expect([label, column]).not.toEqual([label, -1]);
    table.rows.forEach((row, r) => {
      if (typeof row[at] === "number") expect([label, r, shown(top + 1 + r, column)]).toEqual([label, r, row[at]]);
    });
  }
});

async function tablesThrough(host: WorkbookHost): Promise<unknown> {
  return asWritten(ownReport(await host.read(job())).tables);
}

/** As REPORT.json has it: numbers that are not whole have twelve significant digits. */
function asWritten(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value), (_, each) =>
    typeof each === "number" ? Number(each.toPrecision(12)) : each,
  );
}

function ownReport(workbook: WorkbookIn) {
  const parsed = parseSettings({ asOf: AS_OF }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return reportOf(workbook, parsed.settings, TABLES);
}

/** The cells of a sheet's table as Excel hands them to a function. */
function cellsOf(name: string): unknown[][] {
  const { grid, tables } = file.sheets.find((sheet) => sheet.name === name)!;
  const { top, left, bottom, right } = tables[0]!.range;
  return Array.from({ length: bottom - top + 1 }, (_, row) =>
    Array.from({ length: right - left + 1 }, (__, column) => {
      const kind = kindAt(grid, top + row, left + column);
      if (kind === CELL.empty) return null;
      return kind === CELL.text ? stringAt(grid, top + row, left + column) : numberAt(grid, top + row, left + column);
    }),
  );
}
