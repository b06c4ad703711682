import { excelReady } from "../../../src/hosts/excel/ready";
import { inWords } from "../../../src/hosts/excel/failures";
import { HostFailure } from "../../../src/workbook/host";
import { openInOffice } from "../../office/office-globals";
import { startOffice } from "../../office/in-node";
import { MemoryWorkbook } from "../../office/workbook/memory-workbook";
import { failureOf, hasty } from "./support";

beforeAll(() => startOffice());

let book: MemoryWorkbook;

beforeEach(() => {
  book = new MemoryWorkbook({ name: "Alder Fork.xlsx" });
  book.addSheet("Children");
  book.addSheet("Signs");
  openInOffice(book);
});

test("an Excel that is new enough is ready", async () => {
  expect(await excelReady()).toBe(true);
});

test("the workbook's name", async () => {
  expect(await hasty().name()).toBe("Alder Fork.xlsx");
});

test("a cell or a range is shown on its sheet", async () => {
  await hasty().showCell("signs", "C2:C73");
  expect(book.activeSheet?.name).toBe("Signs");
  expect(book.selection).toBe(JSON.stringify({ top: 1, left: 2, bottom: 72, right: 2 }));
  await hasty().showCell("Children", "B4");
  expect(book.selection).toBe(JSON.stringify({ top: 3, left: 1, bottom: 3, right: 1 }));
});

test("a sheet that is gone or hidden is said, and stays hidden", async () => {
  expect((await failureOf(hasty().showCell("Ratings", "A1"))).kind).toBe("changed meanwhile");
  const [children] = book.sheets;
  if (children) children.visibility = "Hidden";
  const failure = await failureOf(hasty().showCell("Children", "A1"));
  expect(failure).toEqual({ kind: "locked", message: expect.stringContaining("Unhide") });
  expect(children?.visibility).toBe("Hidden");
});

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

test("a workbook opens beside this one, byte for byte", async () => {
  const bytes = Uint8Array.from({ length: 100_001 }, (_, index) => (index * 31) % 256);
  await hasty().saveFile("release.xlsx", bytes, XLSX);
  expect(book.opened.map((base64) => Buffer.from(base64, "base64").equals(bytes))).toEqual([true]);
  expect(book.sheets).toHaveLength(2);
});

test("a workbook waits for a cell being edited", async () => {
  book.editingRequests = 2;
  await hasty().saveFile("release.xlsx", new Uint8Array([80, 75]), XLSX);
  expect(book.opened).toEqual(["UEs="]);
});

test("any other file is a download, and a workbook too large for a request, or asked for as a file, too", async () => {
  const clicked: { download?: string; href?: string; click: () => void }[] = [];
  const createElement = document.createElement;
  document.createElement = (() => {
    const link = { click: () => clicked.push(link) };
    return link;
  }) as unknown as typeof document.createElement;
  jest.useFakeTimers();
  try {
    await hasty().saveFile("release.csv", new TextEncoder().encode("a,b"), "text/csv");
    await hasty().saveFile("large.xlsx", new Uint8Array(3_500_000), XLSX);
    await hasty().downloadFile("release.xlsx", new Uint8Array([80, 75]), XLSX);
    jest.runAllTimers();
  } finally {
    jest.useRealTimers();
    document.createElement = createElement;
  }
  expect(clicked.map(({ download }) => download)).toEqual(["release.csv", "large.xlsx", "release.xlsx"]);
  expect(clicked.every(({ href }) => href?.startsWith("blob:"))).toBe(true);
  expect(book.opened).toEqual([]);
});

/** Codes of Microsoft's reference, "Error handling with the application-specific JavaScript APIs". */
test.each([
  ["AccessDenied", "locked"],
  ["ItemNotFound", "changed meanwhile"],
  ["InvalidOperationInCellEditMode", "editing a cell"],
  ["RequestPayloadSizeLimitExceeded", "too large"],
  ["ResponsePayloadSizeLimitExceeded", "too large"],
  ["ApiNotFound", "not supported"],
  ["ItemAlreadyExists", "changed meanwhile"],
  ["GeneralException", "unknown"],
  ["toString", "unknown"],
])("the code %s is a failure of kind %s, in whole sentences and without Excel's own message", (code, kind) => {
  const error = Object.assign(new Error("at Tuuli Canary"), { code, debugInfo: { errorLocation: "Range.values" } });
  const failure = inWords(error) as HostFailure;
  expect(failure).toBeInstanceOf(HostFailure);
  expect(failure.kind).toBe(kind);
  expect(failure.message).not.toContain("Canary");
  expect(failure.message).toMatch(/^[A-Z].*\.$/);
});

test("an error that is not Excel's passes unchanged", () => {
  const own = new TypeError("a mistake of ours");
  expect(inWords(own)).toBe(own);
  const failure = new HostFailure("locked", "said already");
  expect(inWords(failure)).toBe(failure);
});
