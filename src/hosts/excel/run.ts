/// <reference types="office-js" />
import { HostFailure, type JobOptions } from "../../workbook/host";
import { EDITING, inWords, richCode } from "./failures";

/** How long to wait for a person who edits a cell: Excel takes no request meanwhile. */
export interface Patience {
  readonly retryMs: number;
  readonly mostRetries: number;
}

/** Two minutes: time to finish a note, not to go home. */
export const PATIENT: Patience = { retryMs: 500, mostRetries: 240 };

/**
 * Runs one batch, and waits while a cell is being edited. A batch may run again from its start, so it holds at most one
 * request that changes anything.
 */
export function inExcel<T>(
  batch: (context: Excel.RequestContext) => Promise<T>,
  patience: Patience,
  options?: JobOptions,
): Promise<T> {
  return patiently(() => Excel.run(batch), patience, options);
}

/** Asks Excel again until no cell is being edited, and puts its errors into words. */
export async function patiently<T>(ask: () => Promise<T>, patience: Patience, options?: JobOptions): Promise<T> {
  for (let retries = 0; ; retries += 1) {
    options?.signal.throwIfAborted();
    try {
      return await ask();
    } catch (error) {
      if (richCode(error) !== "InvalidOperationInCellEditMode") throw inWords(error);
      if (retries >= patience.mostRetries) throw new HostFailure("editing a cell", EDITING);
      options?.onProgress({ step: EDITING, done: 0, of: 1 });
      await pause(patience.retryMs, options?.signal);
    }
  }
}

function pause(ms: number, signal: AbortSignal | undefined): Promise<void> {
  return new Promise((resolve, reject) => {
    const stop = () => {
      clearTimeout(timer);
      reject(signal?.reason as Error);
    };
    const timer = setTimeout(() => {
      signal?.removeEventListener("abort", stop);
      resolve();
    }, ms);
    signal?.addEventListener("abort", stop, { once: true });
  });
}
