/// <reference types="office-js" />
import { HostFailure } from "../../workbook/host";

/** What the adapter counts on; the manifest asks for the same. */
const NEEDED_EXCEL_API = "1.12";

/** Waits for Office.js. False where the page runs outside of Excel. */
export async function excelReady(): Promise<boolean> {
  const { host } = await Office.onReady();
  if (host !== Office.HostType.Excel) return false;
  if (!isExcelApi(NEEDED_EXCEL_API)) {
    throw new HostFailure(
      "not supported",
      "This version of Excel is too old for the task pane: it needs Excel 2021, Microsoft 365 or Excel on the web. Update Excel, or run the command line on the saved file.",
    );
  }
  return true;
}

export function isExcelApi(version: string): boolean {
  return Office.context.requirements.isSetSupported("ExcelApi", version);
}
