import { openInOffice } from "../../office/office-globals";
import { startOffice } from "../../office/in-node";
import { RichError } from "../../office/protocol/rich-error";
import type { RichApiHost } from "../../office/protocol/rich-api-host";
import { MemoryWorkbook } from "../../office/workbook/memory-workbook";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { REPORT_SHEET } from "./report-sheet";
import { failureOf, hasty, job } from "./support";

beforeAll(() => startOffice());

const CANARY = "Tuuli Canary";
let book: MemoryWorkbook;
let host: RichApiHost;

beforeEach(() => {
  book = new MemoryWorkbook();
  const children = book.addSheet("Children");
  [
    ["Child", "Born"],
    [CANARY, 46_000],
    ["AF-2", 46_001],
  ].forEach((cells, row) => cells.forEach((value, column) => children.put(row, column, value)));
  book.addTable(children, {
    name: "Kids",
    area: { top: 0, left: 0, bottom: 2, right: 1 },
    style: "",
    showHeaders: true,
    showTotals: false,
  });
  book.addSheet("Notes").put(4, 4, "note");
  host = openInOffice(book);
});

const snapshot = () => book.sheets.map((sheet) => sheet.snapshot());
const read = () => hasty().read(job());
const add = (from: WorkbookIn, options = job()) =>
  hasty().addSheets([REPORT_SHEET, REPORT_SHEET], from, "label", options);

test("a failure at any member leaves the workbook as it was, in words without a cell of it", async () => {
  await add(await read());
  const members = [...host.used];
  expect(members.length).toBeGreaterThan(80);
  // The cleaning itself and the end of a run are other tests.
  const ofCleaning = new Set(["Worksheet.Delete", "WorksheetCollection.GetItemOrNullObject"]);
  book.sheets.splice(2);
  const before = snapshot();
  for (const member of members.filter((each) => !ofCleaning.has(each))) {
    const from = await read();
    let left = 2;
    host.plant = (used) => {
      if (used !== member || (left -= 1) > 0) return;
      host.plant = () => undefined;
      throw new RichError("GeneralException", `There was an internal error at ${CANARY}.`, member);
    };
    const failure = await failureOf(add(from));
    host.plant = () => undefined;
    // Members used but once in a run never fail the second time.
    if (failure.kind !== "no failure") {
      expect(failure).toEqual({ kind: "unknown", message: expect.stringContaining("GeneralException") });
      expect(failure.message).not.toContain(CANARY);
    } else book.sheets.splice(2);
    expect(snapshot()).toEqual(before);
  }
}, 60_000);

test("a cancel at any step leaves nothing behind and gives the reason", async () => {
  const before = snapshot();
  let steps = 0;
  const counted = job();
  await add(await read(), { ...counted, onProgress: () => (steps += 1) });
  book.sheets.splice(2);
  expect(steps).toBeGreaterThan(3);
  for (let stop = 1; stop <= steps; stop += 1) {
    const options = job();
    let seen = 0;
    const onProgress = () => {
      seen += 1;
      if (seen === stop) options.cancel();
    };
    const failure = await failureOf(add(await read(), { ...options, onProgress }));
    expect(failure.message).toBe("cancelled by the user");
    expect(snapshot()).toEqual(before);
  }
});

test("a cancel after any request leaves nothing behind", async () => {
  const before = snapshot();
  const from = await read();
  host.traffic.length = 0;
  await add(from);
  const requests = host.traffic.length;
  book.sheets.splice(2);
  for (let stop = 3; stop < requests; stop += 2) {
    const options = job();
    host.traffic.length = 0;
    host.plant = () => {
      if (host.traffic.length === stop) options.cancel();
    };
    const failure = await failureOf(add(from, options));
    host.plant = () => undefined;
    if (failure.kind === "no failure") {
      // the very last one only lets go of what the run held: the report stood before
      expect(stop).toBeGreaterThanOrEqual(requests - 2);
      expect(book.sheets).toHaveLength(4);
      continue;
    }
    expect(failure.message).toBe("cancelled by the user");
    expect(snapshot()).toEqual(before);
  }
}, 60_000);

test("a number that is none is refused, and nothing stays", async () => {
  const sheets = [REPORT_SHEET, { name: "Bad", columns: [], rows: [[1], [Number.NaN]] }];
  await expect(hasty().addSheets(sheets, await read(), "label", job())).rejects.toThrow(RangeError);
  expect(book.sheets).toHaveLength(2);
});

test("a sheet that the user deletes while it is being made stops the job", async () => {
  const from = await read();
  let charts = 0;
  host.plant = (member) => {
    if (member !== "Worksheet.Charts") return;
    charts += 1;
    // While the second sheet is being made, the user deletes both.
    if (charts === 2) book.sheets.splice(2);
  };
  const failure = await failureOf(add(from));
  host.plant = () => undefined;
  expect(failure.kind).toBe("changed meanwhile");
  expect(book.sheets.map(({ name }) => name)).toEqual(["Children", "Notes"]);
});

test("unfinished sheets that cannot be taken away are named", async () => {
  const from = await read();
  host.plant = (member) => {
    if (member === "Worksheet.Charts" || member === "Worksheet.Delete") {
      throw new RichError("GeneralException", "internal", member);
    }
  };
  const { message } = await failureOf(add(from));
  expect(message).toContain("did not let its unfinished sheets be removed: Met by age group.");
});

describe("records that changed after they were read", () => {
  const changes: readonly (readonly [string, () => void])[] = [
    ["a number", () => book.sheets[0]?.put(1, 1, 46_002)],
    ["a text", () => book.sheets[0]?.put(2, 0, "AF-3")],
    ["a cell that was emptied", () => book.sheets[0]?.put(2, 1, undefined)],
    ["a row below", () => book.sheets[0]?.put(3, 0, "AF-4")],
    ["a column beside", () => book.sheets[0]?.put(0, 5, "Site")],
    ["a number format", () => book.sheets[0]?.setFormat(1, 1, "yyyy-mm-dd")],
    ["a number that became text", () => book.sheets[0]?.put(1, 1, "46000")],
    ["a sheet renamed", () => book.sheets.forEach((sheet, index) => index === 0 && (sheet.name = "Kids"))],
    ["a sheet emptied", () => book.sheets[1]?.put(4, 4, undefined)],
    ["a table renamed", () => book.sheets[0]?.tables.forEach((table) => (table.name = "Others"))],
  ];

  test.each(changes)("%s: nothing is added", async (_, change) => {
    const from = await read();
    change();
    const failure = await failureOf(add(from));
    expect(failure).toEqual({ kind: "changed meanwhile", message: expect.stringContaining("Read the workbook again") });
    expect(book.sheets).toHaveLength(2);
  });

  test("a sheet added since, or an earlier report, does not matter", async () => {
    const from = await read();
    book.addSheet("New").put(0, 0, "x");
    await add(from);
    await add(from);
    expect(book.sheets).toHaveLength(7);
  });
});

test("a protected structure is said before anything is tried, and how to go on", async () => {
  const from = await read();
  book.isStructureProtected = true;
  const failure = await failureOf(add(from));
  expect(failure.kind).toBe("locked");
  expect(failure.message).toMatch(/^The structure of this workbook is protected.*save the report as a new workbook\.$/);
  expect(host.used).not.toContain("WorksheetCollection.Add");
});

test("cell editing between two requests of the writing is waited out", async () => {
  const from = await read();
  const options = job();
  let last = host.traffic.length;
  // Someone begins to edit a cell in every tenth request.
  host.plant = () => {
    if (host.traffic.length < last + 10) return;
    last = host.traffic.length;
    book.editingRequests = 2;
  };
  await add(from, options);
  host.plant = () => undefined;
  expect(options.steps.filter(({ step }) => step.includes("being edited")).length).toBeGreaterThan(2);
  expect(book.sheets.map(({ name }) => name)).toEqual([
    "Children",
    "Notes",
    "Met by age group",
    "Met by age group (2)",
  ]);
  expect(book.sheets.slice(2).map(({ charts, tables }) => [charts.length, tables.length])).toEqual([
    [2, 1],
    [2, 1],
  ]);
});
