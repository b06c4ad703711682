import type { WorkbookHost } from "../../../workbook/host";
import type { WorkbookIn } from "../../../workbook/workbook";

/** The pane in its place on the page. */
export interface MountedPane {
  readonly unmount: () => void;
  /** What would be lost with the pane, as a person would name it: "the report". Empty where all is saved. */
  readonly unsaved: () => readonly string[];
}

/** What the page is given by whoever puts it together: it knows neither the file format nor the pane. */
export interface PageServices {
  /** @throws {Error} of which the message tells the person what is wrong with the file */
  readonly readWorkbook: (bytes: Uint8Array) => Promise<WorkbookIn>;
  readonly mountPane: (root: HTMLElement, host: WorkbookHost) => MountedPane;
  readonly sampleAddress: string;
}
