/// <reference types="office-js" />
import type { JobOptions, Receipt, WorkbookHost } from "../../workbook/host";
import type { SheetOut } from "../../workbook/sheets";
import type { WorkbookIn } from "../../workbook/workbook";
import { loadDecisions, saveDecisions } from "./decisions";
import { markedSheets } from "./mark";
import { readWorkbook } from "./read/read-workbook";
import { receiptsOf, removeAdded } from "./receipts";
import { inExcel, PATIENT, type Patience } from "./run";
import { download, saveFile } from "./save-file";
import { showCell } from "./show-cell";
import { addSheets } from "./write/add-sheets";

/** The workbook that is open in Excel, as the pane sees it. Made once `excelReady` has answered true. */
export class ExcelWorkbook implements WorkbookHost {
  readonly kind = "excel";

  constructor(private readonly patience: Patience = PATIENT) {}

  name(): Promise<string> {
    return inExcel(async (context) => {
      context.workbook.load("name");
      await context.sync();
      return context.workbook.name;
    }, this.patience);
  }

  read(options: JobOptions): Promise<WorkbookIn> {
    return readWorkbook(this.patience, options);
  }

  addSheets(sheets: readonly SheetOut[], read: WorkbookIn, label: string, options: JobOptions): Promise<Receipt> {
    return addSheets(sheets, read, label, this.patience, options);
  }

  receipts(): Promise<readonly Receipt[]> {
    return inExcel(async (context) => receiptsOf(await markedSheets(context)), this.patience);
  }

  removeAdded(receipt: Receipt): Promise<void> {
    return removeAdded(receipt, this.patience);
  }

  showCell(sheet: string, cell: string): Promise<void> {
    return showCell(sheet, cell, this.patience);
  }

  loadDecisions(): Promise<unknown> {
    return loadDecisions(this.patience);
  }

  saveDecisions(decisions: unknown): Promise<void> {
    return saveDecisions(decisions, this.patience);
  }

  saveFile(fileName: string, bytes: Uint8Array, mimeType: string): Promise<void> {
    return saveFile(fileName, bytes, mimeType, this.patience);
  }

  async downloadFile(fileName: string, bytes: Uint8Array, mimeType: string): Promise<void> {
    download(fileName, bytes, mimeType);
  }
}
