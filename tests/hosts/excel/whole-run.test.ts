import { serialOf } from "../../../src/age/serial";
import { parseSettings } from "../../../src/settings/settings";
import { reportOf } from "../../support/report-of";
import { reportSheets } from "../../../src/report/sheets/report-sheets";
import { makeSample } from "../../../src/sample/make-sample";
import { sampleSheets } from "../../../src/sample/sample-sheets";
import type { TableId } from "../../../src/tables/table";
import type { CellOut, SheetOut } from "../../../src/workbook/sheets";
import { openInOffice } from "../../office/office-globals";
import { startOffice } from "../../office/in-node";
import type { MemorySheet } from "../../office/workbook/memory-sheet";
import { bookOf, hasty, job } from "./support";

beforeAll(() => startOffice());

/** What must stand in a cell; a chart's message is a cell that only Excel has. */
function expectedValue(cell: CellOut, sheet: SheetOut, column: number): unknown {
  const whole = typeof cell === "object" && cell !== null ? cell : { value: cell, ...sheet.columns[column] };
  if (whole.value === null || whole.value === "") return undefined;
  return whole.format === "date" && typeof whole.value === "number" ? serialOf(whole.value, 1900) : whole.value;
}

test("a whole run: the sample is read, its report written cell by cell, and taken away without a trace", async () => {
  const book = bookOf(sampleSheets(makeSample({ children: 16, seed: 3 })));
  openInOffice(book);
  const before = book.sheets.map((sheet) => sheet.snapshot());
  const excel = hasty();
  const workbook = await excel.read(job());
  const parsed = parseSettings({ asOf: "2026-09-30" }, 1900);
  if (!("settings" in parsed)) throw new Error(parsed.messages.join());
  const tables: readonly TableId[] = [
    "met-by-band",
    "reached-by-age",
    "since-enrollment",
    "age-when-met",
    "agreement",
    "skill-status",
    "referrals",
    "referral-scan",
    "referral-steps",
    "ratings",
    "trend",
  ];
  const sheets = reportSheets(reportOf(workbook, parsed.settings, tables));
  const receipt = await excel.addSheets(sheets, workbook, "September 30, 2026", job());

  const added = book.sheets.slice(before.length);
  expect(added.map(({ name }) => name)).toEqual(receipt.sheets);
  expect(added).toHaveLength(sheets.length);
  sheets.forEach((sheet, index) => compare(sheet, added[index] as MemorySheet));
  expect(added.reduce((sum, { charts }) => sum + charts.length, 0)).toBeGreaterThan(20);
  expect(book.sheets.slice(0, before.length).map((sheet) => sheet.snapshot())).toEqual(before);

  await excel.removeAdded(receipt);
  expect(book.sheets.map((sheet) => sheet.snapshot())).toEqual(before);
}, 120_000);

function compare(out: SheetOut, sheet: MemorySheet): void {
  const messages = new Set((out.charts ?? []).map(({ altText }) => altText));
  const isMessage = (value: unknown) => typeof value === "string" && messages.has(value);
  out.rows.forEach((cells, row) =>
    cells.forEach((cell, column) => {
      const value = sheet.valueAt(row, column);
      if (!isMessage(value)) expect(value).toBe(expectedValue(cell, out, column));
    }),
  );
  const used = sheet.usedArea();
  const found = new Set<unknown>();
  for (let row = 0; row <= (used?.bottom ?? 0); row += 1) {
    for (let column = 0; column <= (used?.right ?? 0); column += 1) found.add(sheet.valueAt(row, column));
  }
  messages.forEach((message) => expect(found).toContain(message));
  expect(sheet.charts.length).toBe(out.charts?.length ?? 0);
  expect(sheet.tables.map(({ area }) => area.left)).toEqual((out.tables ?? []).map(({ range }) => range.left));
}
