/// <reference types="office-js" />
import { HostFailure, type JobOptions } from "../../../workbook/host";
import { type MarkedSheet, markedSheets } from "../mark";
import { type Patience, readInExcel } from "../run";

/** What stands in the workbook before anything is added. */
export interface Standing {
  readonly sheets: readonly MarkedSheet[];
  /** Of tables and of named cells. */
  readonly tableNames: readonly string[];
}

/** Fails with "locked" where no sheet can be added or deleted. */
export function readStanding(patience: Patience, options?: JobOptions): Promise<Standing> {
  return readInExcel(
    async (context) => {
      const { protection, tables, names } = context.workbook;
      protection.load("protected");
      tables.load("items/name");
      names.load("items/name");
      const sheets = await markedSheets(context);
      if (protection.protected) throw new HostFailure("locked", STRUCTURE_PROTECTED);
      return { sheets, tableNames: [...tables.items, ...names.items].map(({ name }) => name) };
    },
    patience,
    options,
  );
}

const STRUCTURE_PROTECTED =
  "The structure of this workbook is protected, so no sheet can be added or deleted. Switch it off (Review, Protect Workbook), or save the report as a new workbook.";
