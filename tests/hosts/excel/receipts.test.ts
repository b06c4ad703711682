import { openInOffice } from "../../office/office-globals";
import { startOffice } from "../../office/in-node";
import type { MemorySheet } from "../../office/workbook/memory-sheet";
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

/** Saved, closed and opened again: other objects, and other ids. */
function reopen(): void {
  book = book.reopened();
  openInOffice(book);
}

test("each run has a receipt that outlives a reload", async () => {
  await add("June 30, 2026", "Summary", "Method");
  await add("September 30, 2026", "Summary");
  reopen();
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

test("renamed sheets are known after the workbook was opened again, and removed", async () => {
  await add("label", "Summary", "Method");
  (book.sheets[1] as MemorySheet).name = "Board meeting";
  reopen();
  const [receipt] = await hasty().receipts();
  expect(receipt).toEqual({ label: "label", sheets: ["Board meeting", "Method"] });
  await hasty().removeAdded(receipt!);
  expect([names(), [...book.names.keys()]]).toEqual([["Children"], []]);
});

describe("a copy of an added sheet is the user's own and stays", () => {
  test.each([
    ["as Excel names it", "Summary", "Summary (2)"],
    ["under the name of the first, which was renamed", "Board meeting", "Summary"],
    ["when both were renamed", "Board meeting", "Draft"],
  ])("%s", async (_, first, second) => {
    await add("label", "Summary");
    const copy = book.copySheet(book.sheets[1]!);
    [book.sheets[1]!.name, copy.name] = [first, second];
    reopen();
    const [receipt] = await hasty().receipts();
    expect(receipt).toEqual({ label: "label", sheets: [first] });
    await hasty().removeAdded({ label: "label", sheets: [first, second] });
    expect(names()).toEqual(["Children", second]);
    expect(await hasty().receipts()).toEqual([]);
  });
});

test("where the workbook's names were lost, the name given tells, or the sheets are named as unsure and stay", async () => {
  await add("label", "Summary");
  book.copySheet(book.sheets[1]!);
  book.names.clear();
  reopen();
  expect(await hasty().receipts()).toEqual([{ label: "label", sheets: ["Summary"] }]);
  [book.sheets[1]!.name, book.sheets[2]!.name] = ["One", "Other"];
  expect(await hasty().receipts()).toEqual([{ label: "label", sheets: [], unsure: ["One", "Other"] }]);
  expect((await failureOf(hasty().removeAdded({ label: "label", sheets: ["One", "Other"] }))).kind).toBe(
    "changed meanwhile",
  );
  const { sheets } = await hasty().read(job());
  expect(sheets.map(({ name }) => name)).toEqual(["Children"]);
});

test("sheets that version 0.1.0 added are known by their name or id", async () => {
  const old = { kind: "report", run: 3, label: "June 30, 2026", name: "Summary", id: "{OLD}" };
  book.addSheet("Summary").customProperties.set("Windowline", JSON.stringify(old));
  expect(await hasty().receipts()).toEqual([{ label: "June 30, 2026", sheets: ["Summary"] }]);
  await add("label", "Summary");
  expect((await hasty().receipts()).map(({ sheets }) => sheets)).toEqual([["Summary"], ["Summary (2)"]]);
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

test("a mark holds a random key, its name, the id and the label of its run, and nothing of the records", async () => {
  await add("September 30, 2026", "Summary");
  const [mark] = [...(book.sheets[1]?.customProperties.values() ?? [])].map(
    (text) => JSON.parse(text) as { key: string },
  );
  expect(mark).toEqual({
    ...{ kind: "report", run: 1, label: "September 30, 2026", name: "Summary", id: book.sheets[1]?.id, whole: true },
    key: expect.stringMatching(/^[0-9a-f]{16}-1$/),
  });
  expect([...book.names]).toEqual([[`Windowline_${mark?.key}`, { sheet: book.sheets[1], visible: false }]]);
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
