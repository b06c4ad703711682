import { openInOffice } from "../../office/office-globals";
import { startOffice } from "../../office/in-node";
import { MemorySheet } from "../../office/workbook/memory-sheet";
import { MemoryWorkbook } from "../../office/workbook/memory-workbook";
import { REPORT_SHEET } from "./report-sheet";
import { failureOf, hasty, job } from "./support";

beforeAll(() => startOffice());

let book: MemoryWorkbook;

beforeEach(() => {
  book = new MemoryWorkbook();
  book.addSheet("Children").put(0, 0, "Tuuli Canary");
  openInOffice(book);
});

async function add(label: string, ...names: string[]): Promise<void> {
  const excel = hasty();
  const sheets = names.map((name) => ({ ...REPORT_SHEET, name }));
  await excel.addSheets(sheets, await excel.read(job()), label, job());
}

const names = () => book.sheets.map(({ name }) => name);

/** Saved, closed and opened again: other objects, and other ids where Excel does not keep them. */
function reopen(keepsIds: boolean): void {
  const sheets = book.sheets.map((sheet, index) => {
    const again = new MemorySheet(keepsIds ? sheet.id : `{OTHER-${index}}`, sheet.name);
    sheet.customProperties.forEach((value, key) => again.customProperties.set(key, value));
    again.put(0, 0, "x");
    return again;
  });
  book = new MemoryWorkbook();
  book.sheets.push(...sheets);
  openInOffice(book);
}

test.each([true, false])("each run has a receipt that outlives a reload (ids kept: %s)", async (keepsIds) => {
  await add("June 30, 2026", "Summary", "Method");
  await add("September 30, 2026", "Summary");
  reopen(keepsIds);
  expect(await hasty().receipts()).toEqual([
    { label: "June 30, 2026", sheets: ["Summary", "Method"] },
    { label: "September 30, 2026", sheets: ["Summary (2)"] },
  ]);
  await hasty().removeAdded({ label: "June 30, 2026", sheets: ["Summary", "Method"] });
  expect(names()).toEqual(["Children", "Summary (2)"]);
  expect(await hasty().receipts()).toEqual([{ label: "September 30, 2026", sheets: ["Summary (2)"] }]);
});

test("a sheet renamed by the user is still known, under its new name", async () => {
  await add("label", "Summary");
  (book.sheets[1] as MemorySheet).name = "Board meeting";
  expect(await hasty().receipts()).toEqual([{ label: "label", sheets: ["Board meeting"] }]);
});

test("a copy of an added sheet is the user's own and stays", async () => {
  await add("label", "Summary");
  const copy = book.addSheet("Summary (2)");
  book.sheets[1]?.customProperties.forEach((value, key) => copy.customProperties.set(key, value));
  const [receipt] = await hasty().receipts();
  expect(receipt?.sheets).toEqual(["Summary"]);
  await hasty().removeAdded({ label: "label", sheets: ["Summary", "Summary (2)"] });
  expect(names()).toEqual(["Children", "Summary (2)"]);
});

test("a sheet that the user made under the name of a removed one stays", async () => {
  await add("label", "Summary");
  const [receipt] = await hasty().receipts();
  book.sheets.splice(1);
  book.addSheet("Summary").put(0, 0, "mine");
  const failure = await failureOf(hasty().removeAdded(receipt ?? { label: "", sheets: [] }));
  expect(failure.kind).toBe("changed meanwhile");
  expect(names()).toEqual(["Children", "Summary"]);
});

test("a receipt that names a sheet of the user's removes nothing of it", async () => {
  await add("label", "Summary");
  await hasty().removeAdded({ label: "label", sheets: ["Children", "Summary"] });
  expect(names()).toEqual(["Children"]);
});

test("removing changes no byte of the user's sheets", async () => {
  const before = book.sheets[0]?.snapshot();
  await add("label", "Summary");
  await hasty().removeAdded({ label: "label", sheets: ["Summary"] });
  expect(book.sheets.map((sheet) => sheet.snapshot())).toEqual([before]);
});

test("a mark holds the name, the id and the label of its run, and nothing of the records", async () => {
  await add("September 30, 2026", "Summary");
  const marks = [...(book.sheets[1]?.customProperties.values() ?? [])];
  expect(marks.map((mark) => JSON.parse(mark) as unknown)).toEqual([
    { kind: "report", run: 1, label: "September 30, 2026", name: "Summary", id: book.sheets[1]?.id },
  ]);
  expect(book.sheets[0]?.customProperties.size).toBe(0);
});

test.each(["", "{", "null", "[]", '{"kind":"report"}', '{"kind":"other","run":1,"label":"","name":"Own","id":""}'])(
  "a custom property %j that is no mark makes no receipt",
  async (text) => {
    book.addSheet("Own").customProperties.set("Windowline", text);
    expect(await hasty().receipts()).toEqual([]);
  },
);

test("a protected structure keeps the sheets, and says so", async () => {
  await add("label", "Summary");
  book.isStructureProtected = true;
  const failure = await failureOf(hasty().removeAdded({ label: "label", sheets: ["Summary"] }));
  expect(failure).toEqual({ kind: "locked", message: expect.stringContaining("Protect Workbook") });
  expect(names()).toEqual(["Children", "Summary"]);
});

test("sheets of an earlier report are no records", async () => {
  await add("label", "Summary");
  const { sheets } = await hasty().read(job());
  expect(sheets.map(({ name }) => name)).toEqual(["Children"]);
});

test("the last visible sheet cannot be removed, and that is said", async () => {
  await add("label", "Summary");
  (book.sheets[0] as MemorySheet).visibility = "Hidden";
  const failure = await failureOf(hasty().removeAdded({ label: "label", sheets: ["Summary"] }));
  expect(failure).toEqual({ kind: "locked", message: expect.stringContaining("visible") });
  expect(names()).toEqual(["Children", "Summary"]);
});
