import type { SheetOut } from "../../src/workbook/sheets";
import type { WorkbookIn } from "../../src/workbook/workbook";
import { buffersOf } from "../worker/load";
import type { MadeKind } from "../worker/messages";
import { SheetsInParts } from "../worker/sheet-parts";
import type { AskOptions, WorkClient } from "./work-client";

/** Texts that cross at a time. */
const STRINGS_A_PART = 20_000;

/** What the pane keeps of a workbook while the worker holds its columns. */
export interface HandedOver {
  readonly dateSystem: WorkbookIn["dateSystem"];
  readonly sheets: WorkbookIn["sheets"];
}

/** Hands a workbook to the worker: columns are transferred, texts follow in parts. The columns given are empty afterwards. */
export async function handOver(client: WorkClient, workbook: WorkbookIn, options: AskOptions): Promise<HandedOver> {
  const sheets = workbook.sheets.map(({ grid: { rowCount, columns }, ...sheet }) => ({ ...sheet, rowCount, columns }));
  const transfer = buffersOf(workbook.sheets.map(({ grid }) => grid.columns));
  await client.ask("open", { workbook: { dateSystem: workbook.dateSystem, sheets } }, { ...options, transfer });
  for (const [sheet, { grid }] of workbook.sheets.entries()) {
    for (let from = 0; from < grid.strings.length; from += STRINGS_A_PART) {
      await client.ask("strings", { sheet, part: grid.strings.slice(from, from + STRINGS_A_PART) }, options);
    }
  }
  return workbook;
}

/** The workbook as it was read, its columns back from the worker. */
export async function takeBack(client: WorkClient, kept: HandedOver, options: AskOptions): Promise<WorkbookIn> {
  const columns = await client.ask("giveBack", {}, options);
  const sheets = kept.sheets.map((sheet, index) => ({
    ...sheet,
    grid: { ...sheet.grid, columns: columns[index] ?? [] },
  }));
  return { dateSystem: kept.dateSystem, sheets };
}

export async function takeSheets(client: WorkClient, of: MadeKind, options: AskOptions): Promise<SheetOut[]> {
  const parts = new SheetsInParts();
  const heads = await client.ask("sheets", { of }, { ...options, onRows: (part) => parts.add(part) });
  return parts.whole(heads);
}
