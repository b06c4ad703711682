/// <reference types="office-js" />
/** What the Chromium test of the Excel adapter loads before office.js: the workbook in memory, and the adapter over it. */
import { ExcelWorkbook } from "../../src/hosts/excel/excel-workbook";
import { excelReady } from "../../src/hosts/excel/ready";
import { readDateSystem } from "../../src/hosts/excel/date-system";
import type { SheetOut } from "../../src/workbook/sheets";
import { checkApiLevels, openInOffice, prepareOffice } from "./office-globals";
import { MANIFEST_SETS } from "./rich-client";
import { MemoryWorkbook, type MemoryWorkbookOptions } from "./workbook/memory-workbook";

prepareOffice(MANIFEST_SETS);
let book = new MemoryWorkbook();
openInOffice(book);

const options = () => ({ signal: new AbortController().signal, onProgress: () => undefined });

const tools = {
  async start(): Promise<boolean> {
    const ready = await excelReady();
    checkApiLevels();
    return ready;
  },
  /** A workbook of one sheet with so many rows. */
  open(rows: number, more: MemoryWorkbookOptions): void {
    book = new MemoryWorkbook(more);
    const sheet = book.addSheet("Observations");
    for (let row = 0; row < rows; row += 1) {
      [`AF-${row % 900}`, `skill ${row % 60}`, 46_000 + (row % 300), "yes"].forEach((value, column) =>
        sheet.put(row, column, value),
      );
    }
    openInOffice(book);
  },
  dateSystem: () => readDateSystem(),
  async read(): Promise<number> {
    const { sheets } = await new ExcelWorkbook().read(options());
    return sheets[0]?.grid.rowCount ?? 0;
  },
  async add(sheets: readonly SheetOut[]): Promise<readonly string[]> {
    const excel = new ExcelWorkbook();
    return (await excel.addSheets(sheets, await excel.read(options()), "label", options())).sheets;
  },
  async removeAll(): Promise<void> {
    const excel = new ExcelWorkbook();
    for (const receipt of await excel.receipts()) await excel.removeAdded(receipt);
  },
  names: () => book.sheets.map(({ name }) => name),
  valueAt: (sheet: number, row: number, column: number) => book.sheets[sheet]?.valueAt(row, column),
  /** A mistake planted on purpose: the code that the client catches it with. */
  async plantUnloaded(): Promise<unknown> {
    const sheet = Excel.run(
      async (context) => context.workbook.worksheets.getItem("Observations").getRange("A1").values,
    );
    return sheet.catch((error: { code?: unknown }) => error.code);
  },
  async plantNewerApi(): Promise<unknown> {
    const run = Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Observations").getRange("A1").getMergedAreasOrNullObject();
    });
    return run.catch((error: { code?: unknown }) => error.code);
  },
};

export type PageTools = typeof tools;

(globalThis as unknown as { tools: PageTools }).tools = tools;
