import { HostFailure, type Receipt } from "../../src/workbook/host";
import { takeBack, takeSheets } from "../client/hand-over";
import type { MadeKind } from "../worker/messages";
import { type JobTools, listReceipts, type Pane } from "./pane";

export interface MadeSheets {
  readonly of: MadeKind;
  /** How the receipt names the run. */
  readonly label: string;
  /** Told once what was made stands, whether or not the workbook took it. */
  readonly onMade: () => void;
}

/** Adds the sheets that the worker made to the workbook that it made them from: all of them, or none. */
export async function addMade(pane: Pane, { of, label, onMade }: MadeSheets, tools: JobTools): Promise<Receipt> {
  const { host, client } = pane;
  const sheets = await takeSheets(client, of, tools);
  const read = await takeBack(client, pane.handedOver ?? { dateSystem: 1900, sheets: [] }, tools);
  pane.handedOver = null;
  tools.onProgress({ step: "Adding the sheets", done: 0, of: sheets.length });
  try {
    const receipt = await host.addSheets(sheets, read, label, tools);
    onMade();
    return receipt;
  } catch (error) {
    if (isStillTrue(error)) onMade();
    throw error;
  } finally {
    // after a failure too: what could not be taken away is offered for removal
    await listReceipts(pane);
  }
}

/** Where the workbook takes no sheets they can be saved beside it, unless its records have changed. */
function isStillTrue(error: unknown): boolean {
  return error instanceof HostFailure && error.kind !== "changed meanwhile";
}
