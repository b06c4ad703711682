import { type IWorkbookData, LocaleType } from "@univerjs/core";
import type { JobOptions } from "../../../workbook/host";
import type { WorkbookIn } from "../../../workbook/workbook";
import { DATE_LOOK, HEADER_LOOK } from "./look";
import { openedSheet, STYLE_IDS } from "./opened-sheet";
import { slicesOf } from "./slices";

/** An opened workbook as the grid's own data. Its name there is `id`: the file's own name is not kept. */
export async function openedWorkbook(id: string, workbook: WorkbookIn, options: JobOptions): Promise<IWorkbookData> {
  const slices = slicesOf(options);
  const sheets: IWorkbookData["sheets"] = {};
  const sheetOrder: string[] = [];
  for (const [index, sheet] of workbook.sheets.entries()) {
    options.onProgress({ step: "Laying out the sheets", done: index, of: workbook.sheets.length });
    const sheetId = sheetIdAt(index);
    sheetOrder.push(sheetId);
    sheets[sheetId] = await openedSheet(sheetId, sheet, sheet.dateSystem ?? workbook.dateSystem, slices);
  }
  const styles = {
    [STYLE_IDS.date]: DATE_LOOK,
    [STYLE_IDS.header]: HEADER_LOOK,
    [STYLE_IDS.dateInHeader]: { ...HEADER_LOOK, ...DATE_LOOK },
  };
  return { id, name: id, appVersion: "", locale: LocaleType.EN_US, styles, sheetOrder, sheets };
}

export function sheetIdAt(index: number): string {
  return `sheet-${index}`;
}
