/// <reference types="office-js" />
import { HostFailure, type JobOptions } from "../../../workbook/host";
import { inExcel, type Patience } from "../run";

export interface AddedSheet {
  readonly id: string;
  readonly name: string;
}

/** Deletes sheets by their id; one that is gone is passed over. */
export function removeSheets(sheets: readonly AddedSheet[], patience: Patience, options?: JobOptions): Promise<void> {
  return inExcel(
    async (context) => {
      const found = sheets.map(({ id }) => context.workbook.worksheets.getItemOrNullObject(id).load("id"));
      await context.sync();
      options?.signal.throwIfAborted();
      for (const sheet of found) if (!sheet.isNullObject) sheet.delete();
      await context.sync();
    },
    patience,
    options,
  );
}

/** Takes away what a job had added when it stopped; the user hears of what could not be taken away. */
export async function withdraw(added: readonly AddedSheet[], patience: Patience): Promise<void> {
  if (added.length === 0) return;
  try {
    await removeSheets(added, patience);
  } catch {
    const names = added.map(({ name }) => name).join(", ");
    throw new HostFailure(
      "unknown",
      `The job stopped, and Excel did not let its unfinished sheets be taken away. Delete them by hand: ${names}.`,
    );
  }
}
