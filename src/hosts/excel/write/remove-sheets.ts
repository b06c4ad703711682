/// <reference types="office-js" />
import type { JobOptions } from "../../../workbook/host";
import { anchorName } from "../mark";
import { inExcel, type Patience } from "../run";

export interface SheetToRemove {
  readonly id: string;
  readonly key: string;
  /** Its name of the workbook then stays, leading nowhere: without it the copy could be taken for the sheet. */
  readonly hasCopy?: boolean;
}

/** Deletes sheets by their id, and the names that led to them; one that is gone is passed over. */
export function removeSheets(
  sheets: readonly SheetToRemove[],
  patience: Patience,
  options?: JobOptions,
): Promise<void> {
  return inExcel(
    async (context) => {
      const { worksheets, names } = context.workbook;
      const found = [
        ...sheets.map(({ id }) => worksheets.getItemOrNullObject(id).load("id")),
        // the names go last: without them a sheet that stays could not be told from a copy
        ...sheets
          .filter(({ hasCopy }) => !hasCopy)
          .map(({ key }) => names.getItemOrNullObject(anchorName(key)).load("name")),
      ];
      await context.sync();
      options?.signal.throwIfAborted();
      for (const each of found) if (!each.isNullObject) each.delete();
      await context.sync();
    },
    patience,
    options,
  );
}
