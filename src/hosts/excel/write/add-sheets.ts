/// <reference types="office-js" />
import type { JobOptions, Receipt } from "../../../workbook/host";
import { safeSheetNames } from "../../../workbook/sheet-names";
import type { SheetOut } from "../../../workbook/sheets";
import type { WorkbookIn } from "../../../workbook/workbook";
import { type Mark, setMark } from "../mark";
import { checkUnchanged } from "../read/check-unchanged";
import { inExcel, type Patience } from "../run";
import { type AddedSheet, withdraw } from "./remove-sheets";
import { readStanding } from "./standing";
import { TableNames } from "./tables";
import { writeSheet } from "./write-sheet";

/** Adds all sheets or none: what was added before a failure or a cancel is taken away again. */
export async function addSheets(
  sheets: readonly SheetOut[],
  read: WorkbookIn,
  label: string,
  patience: Patience,
  options: JobOptions,
): Promise<Receipt> {
  const standing = await readStanding(patience, options);
  await checkUnchanged(read, patience, options);
  const names = freshNames(
    sheets,
    standing.sheets.map(({ name }) => name),
  );
  const run = Math.max(0, ...standing.sheets.map(({ mark }) => mark?.run ?? 0)) + 1;
  const tableNames = new TableNames(standing.tableNames);
  const added: AddedSheet[] = [];
  try {
    for (const [done, sheet] of sheets.entries()) {
      options.onProgress({ step: "Adding the sheets", done, of: sheets.length });
      const name = names[done] as string;
      const id = await addSheet(name, { kind: "report", run, label }, patience, options, added);
      await writeSheet(id, sheet, read.dateSystem, tableNames, patience, options);
    }
    options.signal.throwIfAborted();
    return { sheets: names, label };
  } catch (error) {
    await withdraw(added, patience);
    throw error;
  }
}

/** The new sheet is noted in `added` before anything else can fail; gives its id. */
export async function addSheet(
  name: string,
  mark: Omit<Mark, "name" | "id">,
  patience: Patience,
  options: JobOptions | undefined,
  added: AddedSheet[],
): Promise<string> {
  const id = await inExcel(
    async (context) => {
      const sheet = context.workbook.worksheets.add(name);
      sheet.load("id");
      await context.sync();
      return sheet.id;
    },
    patience,
    options,
  );
  added.push({ id, name });
  await inExcel(
    async (context) => {
      setMark(context.workbook.worksheets.getItem(id), { ...mark, name, id });
      await context.sync();
    },
    patience,
    options,
  );
  return id;
}

export function freshNames(sheets: readonly Pick<SheetOut, "name">[], standing: readonly string[]): string[] {
  return safeSheetNames([...standing, ...sheets.map(({ name }) => name)]).slice(standing.length);
}
