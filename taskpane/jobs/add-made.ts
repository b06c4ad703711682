import { HostFailure, type Receipt } from "../../src/workbook/host";
import { takeBack, takeSheets } from "../client/hand-over";
import type { MadeKind } from "../worker/messages";
import type { JobTools, Pane } from "./pane";

export interface MadeSheets {
  readonly of: MadeKind;
  /** How the receipt names the run. */
  readonly label: string;
  /** Told once what was made stands, whether or not the workbook took it. */
  readonly onMade: () => void;
}

/** Adds the sheets that the worker made to the workbook that it made them from: all of them, or none. */
export async function addMade(pane: Pane, { of, label, onMade }: MadeSheets, tools: JobTools): Promise<Receipt> {
  const { host, client, store } = pane;
  const sheets = await takeSheets(client, of, tools);
  const read = await takeBack(client, pane.handedOver ?? { dateSystem: 1900, sheets: [] }, tools);
  pane.handedOver = null;
  tools.onProgress({ step: "Adding the sheets", done: 0, of: sheets.length });
  const receipt = await host.addSheets(sheets, read, label, tools).catch((error: unknown) => {
    if (isStillTrue(error)) onMade();
    throw error;
  });
  onMade();
  store.dispatch({ type: "receipts known", receipts: await host.receipts() });
  return receipt;
}

/** Where the workbook takes no sheets they can be saved beside it, unless its records have changed. */
function isStillTrue(error: unknown): boolean {
  return error instanceof HostFailure && error.kind !== "changed meanwhile";
}
