import { PageWorkbook } from "../../../src/hosts/page/page-workbook";
import { HostFailure, type JobOptions } from "../../../src/workbook/host";
import type { SheetOut } from "../../../src/workbook/sheets";
import { bookOf, contentsOf, everyKind, quietly } from "./books";
import { MemoryGrid } from "./memory-grid";

const report: SheetOut[] = ["Children", "Method"].map((name) => ({
  name,
  columns: [{ width: 10 }, { width: 12, format: "date" }],
  rows: [
    ["Made", 20_000],
    [
      { value: "Share", style: "label" },
      { value: 0.5, format: "share" },
    ],
  ],
}));

async function opened(dateSystem: 1900 | 1904 = 1900) {
  const grid = new MemoryGrid();
  const book = bookOf(everyKind(), dateSystem);
  return {
    grid,
    book,
    host: await PageWorkbook.open(grid.asPageGrid(), { name: "own.xlsx", workbook: book }, quietly()),
  };
}

describe("a workbook laid out in the grid and read back", () => {
  test.each([1900, 1904] as const)("is the same, cell by cell, in the %i date system", async (dateSystem) => {
    const { host, book } = await opened(dateSystem);
    const read = await host.read(quietly());
    expect(read.dateSystem).toBe(dateSystem);
    expect(contentsOf(read.sheets[0]!.grid)).toEqual(contentsOf(book.sheets[0]!.grid));
    expect(read.sheets[0]!.tables).toEqual(book.sheets[0]!.tables);
  });

  /** ECMA-376 Part 1, 18.17.4.1: the systems are 1,462 days apart. The grid itself counts from 1900. */
  test("shows a date of a 1904 workbook as the day it is", async () => {
    const { grid } = await opened(1904);
    expect(grid.kept[0]!.cells[1]?.[1]).toMatchObject({ v: 45_000 + 1_462, s: "date" });
  });

  test("a table takes in rows typed right below it, and moves with rows put in above", async () => {
    const { grid, host } = await opened();
    grid.kept[0]!.cells[3] = { 1: { v: 45_001, s: "date" } };
    expect((await host.read(quietly())).sheets[0]!.tables[0]!.range).toMatchObject({ top: 0, bottom: 5 });
    grid.change({ sheetId: grid.kept[0]!.id, lines: "rows", at: 0, count: 10 });
    expect((await host.read(quietly())).sheets[0]!.tables[0]!.range).toMatchObject({ top: 10, bottom: 12 });
  });

  test("names of tables in formulas become addresses", async () => {
    const { grid } = await opened();
    expect(grid.rewrite("=COUNTA(Children[Birth date])")).toBe("=COUNTA(Children!$B$2:$B$3)");
  });
});

describe("sheets of a report", () => {
  test("come last, under fresh names, with a receipt by which they go again", async () => {
    const { grid, host } = await opened();
    const receipt = await host.addSheets(report, await host.read(quietly()), "September 30, 2026", quietly());
    expect(grid.sheets().map(({ name }) => name)).toEqual(["Children", "Children (2)", "Method"]);
    expect(receipt).toEqual({ sheets: ["Children (2)", "Method"], label: "September 30, 2026" });
    expect(await host.receipts()).toEqual([receipt]);
    await host.removeAdded(receipt);
    expect(grid.sheets().map(({ name }) => name)).toEqual(["Children"]);
    expect(await host.receipts()).toEqual([]);
  });

  /** 20,000 days after January 1, 1970 is October 4, 2024, serial 45,569. */
  test("hold days as serial numbers that show as dates", async () => {
    const { grid, host } = await opened();
    await host.addSheets(report, await host.read(quietly()), "", quietly());
    expect(grid.kept[2]!.cells[0]?.[1]).toMatchObject({ v: 45_569, s: { n: { pattern: "yyyy-mm-dd" } } });
    expect(grid.kept[2]!.cells[1]?.[1]).toMatchObject({ v: 0.5, s: { n: { pattern: "0.0%" } } });
  });

  test("are not added where a cell changed meanwhile", async () => {
    const { grid, host } = await opened();
    const read = await host.read(quietly());
    grid.kept[0]!.cells[1]![2] = { v: 3.5 };
    await expect(host.addSheets(report, read, "", quietly())).rejects.toMatchObject({ kind: "changed meanwhile" });
    expect(grid.sheets()).toHaveLength(1);
  });

  test("leave nothing behind when the run is cancelled between two of them", async () => {
    const { grid, host } = await opened();
    const read = await host.read(quietly());
    const cancel = new AbortController();
    const onProgress: JobOptions["onProgress"] = ({ done }) => done === 1 && cancel.abort(new Error("cancelled"));
    const job = host.addSheets(report, read, "", { signal: cancel.signal, onProgress });
    await expect(job).rejects.toThrow("cancelled");
    expect(grid.sheets().map(({ name }) => name)).toEqual(["Children"]);
    expect(await host.receipts()).toEqual([]);
  });

  test("a report added before is not read as records", async () => {
    const { host } = await opened();
    const before = await host.read(quietly());
    await host.addSheets(report, before, "", quietly());
    expect((await host.read(quietly())).sheets.map(({ name }) => name)).toEqual(before.sheets.map(({ name }) => name));
  });

  test("a receipt takes away none of the person's own sheets", async () => {
    const { grid, host } = await opened();
    await host.removeAdded({ sheets: ["Children"], label: "" });
    expect(grid.sheets()).toHaveLength(1);
  });
});

test("a cell is shown by the name of its sheet; a sheet that went is said", async () => {
  const { grid, host } = await opened();
  await host.showCell("Children", "C2:C3");
  expect(grid.selected).toEqual([grid.kept[0]!.id, "C2:C3"]);
  await expect(host.showCell("Gone", "A1")).rejects.toBeInstanceOf(HostFailure);
});

test("an edit of a sheet of one's own is told; a sheet that a run added is none", async () => {
  const { grid, host } = await opened();
  let told = 0;
  const stop = host.onEdit(() => (told += 1));
  await host.addSheets(report, await host.read(quietly()), "", quietly());
  grid.edit(grid.kept[1]!.id);
  expect(told).toBe(0);
  grid.edit(grid.kept[0]!.id);
  expect(told).toBe(1);
  stop();
  grid.edit(grid.kept[0]!.id);
  expect(told).toBe(1);
});
