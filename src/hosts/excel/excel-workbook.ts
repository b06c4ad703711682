/// <reference types="office-js" />
import type { JobOptions, Receipt, SavedAs, WorkbookHost } from "../../workbook/host";
import type { SheetOut } from "../../workbook/sheets";
import type { WorkbookIn } from "../../workbook/workbook";
import { CorrectionsSheet } from "./corrections/corrections";
import { markedSheets } from "./mark";
import { readWorkbook } from "./read/read-workbook";
import { receiptsOf, removeAdded } from "./receipts";
import { PATIENT, type Patience, readInExcel, Unanswered } from "./run";
import { download, saveFile } from "./save-file";
import { showCell } from "./show-cell";
import { addSheets } from "./write/add-sheets";

/** The workbook that is open in Excel, as the pane sees it. Made once `excelReady` has answered true. */
export class ExcelWorkbook implements WorkbookHost {
  readonly kind = "excel";
  private readonly patience: Patience;
  private readonly corrections: CorrectionsSheet;

  constructor(patience: Partial<Patience> = {}) {
    this.patience = { ...PATIENT, ...patience };
    this.corrections = new CorrectionsSheet(this.patience);
  }

  name(options?: JobOptions): Promise<string> {
    const name = readInExcel(
      async (context) => {
        context.workbook.load("name");
        await context.sync();
        return context.workbook.name;
      },
      this.patience,
      options,
    );
    return ofCancel(name);
  }

  read(options: JobOptions): Promise<WorkbookIn> {
    return ofCancel(readWorkbook(this.patience, options));
  }

  addSheets(sheets: readonly SheetOut[], read: WorkbookIn, label: string, options: JobOptions): Promise<Receipt> {
    return ofCancel(addSheets(sheets, read, label, this.patience, options));
  }

  receipts(options?: JobOptions): Promise<readonly Receipt[]> {
    const listed = readInExcel(async (context) => receiptsOf(await markedSheets(context)), this.patience, options);
    return ofCancel(listed);
  }

  removeAdded(receipt: Receipt, options?: JobOptions): Promise<void> {
    return ofCancel(removeAdded(receipt, this.patience, options));
  }

  showCell(sheet: string, cell: string): Promise<void> {
    return showCell(sheet, cell, this.patience);
  }

  loadDecisions(options?: JobOptions): Promise<unknown> {
    return ofCancel(this.corrections.load(options));
  }

  saveDecisions(decisions: unknown, options?: JobOptions): Promise<void> {
    return ofCancel(this.corrections.save(decisions, options));
  }

  saveFile(fileName: string, bytes: Uint8Array, mimeType: string, options?: JobOptions): Promise<SavedAs> {
    return ofCancel(saveFile(fileName, bytes, mimeType, this.patience, options));
  }

  async downloadFile(fileName: string, bytes: Uint8Array, mimeType: string): Promise<void> {
    download(fileName, bytes, mimeType);
  }
}

/** A job that is cancelled ends with the cancel's own reason. */
async function ofCancel<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (error) {
    throw error instanceof Unanswered ? error.reason : error;
  }
}
