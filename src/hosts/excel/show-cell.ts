/// <reference types="office-js" />
import { HostFailure } from "../../workbook/host";
import { inExcel, type Patience } from "./run";

export function showCell(sheetName: string, cell: string, patience: Patience): Promise<void> {
  return inExcel(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(sheetName);
    sheet.load("visibility");
    await context.sync();
    if (sheet.isNullObject) {
      throw new HostFailure("changed meanwhile", "That sheet is no longer there. Read the workbook again.");
    }
    if (sheet.visibility !== "Visible") {
      throw new HostFailure(
        "locked",
        "That sheet is hidden. Unhide it (right-click a sheet tab, Unhide), then try again.",
      );
    }
    sheet.activate();
    sheet.getRange(cell).select();
    await context.sync();
  }, patience);
}
