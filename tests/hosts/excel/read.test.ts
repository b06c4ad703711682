import { parseSettings } from "../../../src/settings/settings";
import { reportOf } from "../../support/report-of";
import { makeSample } from "../../../src/sample/make-sample";
import { sampleSheets } from "../../../src/sample/sample-sheets";
import { CELL, kindAt, numberAt, stringAt } from "../../../src/workbook/cells";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { readDateSystem } from "../../../src/hosts/excel/date-system";
import { openInOffice } from "../../office/office-globals";
import { startOffice } from "../../office/in-node";
import { MemoryWorkbook } from "../../office/workbook/memory-workbook";
import { asRead } from "../../sample/as-read";
import { bookOf, failureOf, hasty, job, plain } from "./support";

beforeAll(() => startOffice());

const sample = sampleSheets(makeSample({ children: 24, seed: 5 }));

const read = (book: MemoryWorkbook, options = job()): Promise<WorkbookIn> => {
  openInOffice(book);
  return hasty().read(options);
};

test("the sample workbook comes in as it stands, whatever an empty cell looks like", async () => {
  const expected = plain(asRead(sample));
  for (const emptyCells of ["", null, 0] as const) {
    expect(plain(await read(bookOf(sample, { emptyCells })))).toEqual(expected);
  }
});

test("the report is the same in both date systems", async () => {
  const reports = [];
  for (const dateSystem of [1900, 1904] as const) {
    const workbook = await read(bookOf(sample, { dateSystem }));
    expect(workbook.dateSystem).toBe(dateSystem);
    expect(await readDateSystem()).toBe(dateSystem);
    const parsed = parseSettings({ asOf: "2026-09-30" }, dateSystem);
    if (!("settings" in parsed)) throw new Error(parsed.messages.join());
    reports.push(reportOf(workbook, parsed.settings, ["met-by-band", "skill-status"]));
  }
  const [one, other] = reports.map((each) => ({ ...each, provenance: null }));
  expect(other).toEqual(one);
  expect(one?.tables.map(({ rows }) => rows.length > 100)).toEqual([true, true]);
}, 30_000);

test("kinds of cells: empty is never 0, dates by their format, errors and truth values as such", async () => {
  const book = new MemoryWorkbook({ emptyCells: 0 });
  const sheet = book.addSheet("Cells");
  const cells: readonly (readonly [string | number | boolean, string])[] = [
    [0, "General"],
    [46_000, "[$-409]d-mmm-yy;@"],
    [1.5, "[h]:mm"],
    [46_000.25, 'yyyy"y"'],
    [5, '0.0 "days"'],
    [true, "General"],
    ["#N/A", "General"],
    ["=text", "@"],
    ["12", "@"],
  ];
  cells.forEach(([value, format], row) => {
    sheet.put(row + 1, 1, value);
    sheet.setFormat(row + 1, 1, format);
  });
  const [{ grid }] = (await read(book)).sheets as [WorkbookIn["sheets"][number]];
  const kinds = cells.map((_, row) => kindAt(grid, row + 1, 1));
  const { number, date, text, boolean, error } = CELL;
  expect(kinds).toEqual([number, date, number, date, number, boolean, error, text, text]);
  expect([kindAt(grid, 0, 0), kindAt(grid, 0, 1), kindAt(grid, 1, 0)]).toEqual([0, 0, 0]);
  expect([numberAt(grid, 1, 1), numberAt(grid, 6, 1)]).toEqual([0, 1]);
  expect([7, 8, 9].map((row) => stringAt(grid, row, 1))).toEqual(["#N/A", "=text", "12"]);
});

test("hidden sheets are read, empty ones are not", async () => {
  const book = new MemoryWorkbook();
  for (const visibility of ["Visible", "Hidden", "VeryHidden"] as const) {
    const sheet = book.addSheet(visibility);
    sheet.put(0, 0, visibility);
    sheet.visibility = visibility;
  }
  book.addSheet("Empty");
  const { sheets } = await read(book);
  expect(sheets.map(({ name }) => name)).toEqual(["Visible", "Hidden", "VeryHidden"]);
});

test("tables come with their place, without headings and with totals too", async () => {
  const book = new MemoryWorkbook();
  const sheet = book.addSheet("Children");
  for (let row = 2; row <= 6; row += 1) sheet.put(row, 1, row);
  const area = { top: 2, left: 1, bottom: 6, right: 3 };
  book.addTable(sheet, { name: "Kids", area, style: "", showHeaders: false, showTotals: true });
  const [read1] = (await read(book)).sheets;
  expect(read1?.tables).toEqual([{ name: "Kids", range: area, headerRow: false, totalsRow: true }]);
});

test("merged areas are not asked for below ExcelApi 1.13", async () => {
  const book = bookOf(sample);
  book.sheets[0]?.merged.push({ top: 0, left: 0, bottom: 0, right: 1 });
  const { sheets } = await read(book);
  expect(sheets[0]?.merged).toEqual([]);
});

test("texts too long for one reply are read in smaller pieces", async () => {
  const book = new MemoryWorkbook();
  const sheet = book.addSheet("Notes");
  const text = (row: number, column: number) => `${row}/${column} ${"x".repeat(32_000)}`;
  for (let row = 0; row < 60; row += 1)
    for (let column = 0; column < 6; column += 1) sheet.put(row, column, text(row, column));
  const host = openInOffice(book);
  const [{ grid }] = (await hasty().read(job())).sheets as [WorkbookIn["sheets"][number]];
  expect(stringAt(grid, 59, 5)).toBe(text(59, 5));
  expect(stringAt(grid, 0, 0)).toBe(text(0, 0));
  expect(grid.strings).toHaveLength(360);
  // 11.5 MB in all: the first try is refused.
  expect(Math.max(...host.traffic.map(({ reply }) => reply))).toBeGreaterThan(5_000_000);
});

test("half a million cells come in slices below 1 MB", async () => {
  const book = new MemoryWorkbook();
  const sheet = book.addSheet("Observations");
  for (let row = 0; row < 125_000; row += 1) {
    [`AF-${row % 900}`, `skill ${row % 60}`, 46_000 + (row % 300), "yes"].forEach((value, column) =>
      sheet.put(row, column, value),
    );
  }
  const host = openInOffice(book);
  const options = job();
  const { sheets } = await hasty().read(options);
  expect(sheets[0]?.grid.rowCount).toBe(125_000);
  expect(Math.max(...host.traffic.map(({ reply }) => reply))).toBeLessThan(1_000_000);
  const done = options.steps.map((step) => step.done);
  expect(done).toHaveLength(25);
  expect(done.at(-1)).toBe(500_000);
  expect(options.steps.every(({ of }) => of === 500_000)).toBe(true);
}, 30_000);

test("a cancel stops the reading with its own reason", async () => {
  const book = bookOf(sample);
  const options = job();
  const reading = read(book, { ...options, onProgress: () => options.cancel() });
  expect((await failureOf(reading)).message).toBe("cancelled by the user");
});

test("a cell being edited is waited for, and said", async () => {
  const book = bookOf(sample);
  book.editingRequests = 3;
  const options = job();
  const workbook = await read(book, options);
  expect(plain(workbook)).toEqual(plain(asRead(sample)));
  const told = options.steps.filter(({ step }) => step.includes("being edited"));
  expect(told).toHaveLength(3);
});

test("someone who never leaves the cell is told what to do", async () => {
  const book = bookOf(sample);
  book.editingRequests = 1000;
  const failure = await failureOf(read(book));
  expect(failure).toEqual({ kind: "editing a cell", message: expect.stringContaining("Enter") });
});

test("a cancel ends the wait for a cell being edited", async () => {
  const book = bookOf(sample);
  book.editingRequests = 1000;
  const options = job();
  const reading = read(book, { ...options, onProgress: () => options.cancel() });
  expect((await failureOf(reading)).message).toBe("cancelled by the user");
  expect(book.editingRequests).toBeGreaterThan(990);
});
