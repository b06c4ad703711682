import type { WorkbookHost } from "../../../workbook/host";
import type { SheetOut } from "../../../workbook/sheets";
import type { WorkbookIn } from "../../../workbook/workbook";

/** What the page is given by whoever puts it together: it knows neither the file format nor the pane. */
export interface PageServices {
  /** @throws {Error} of which the message tells the person what is wrong with the file */
  readonly readWorkbook: (bytes: Uint8Array) => Promise<WorkbookIn>;
  /**
   * An .xlsx file of the workbook, of which the columns are given away; `made` are the sheets of reports by name, and
   * `created` is the ISO date it says it was made on.
   */
  readonly writeWorkbook: (
    workbook: WorkbookIn,
    made: ReadonlyMap<string, SheetOut>,
    created: string,
  ) => Promise<Uint8Array>;
  /** Fills an element with the pane; the answer takes it out again. */
  readonly mountPane: (root: HTMLElement, host: WorkbookHost) => () => void;
  readonly sampleAddress: string;
}

export const XLSX_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
