/// <reference types="office-js" />
import { HostFailure, type JobOptions, type Receipt } from "../../../workbook/host";
import { safeSheetNames } from "../../../workbook/sheet-names";
import type { SheetOut } from "../../../workbook/sheets";
import type { WorkbookIn } from "../../../workbook/workbook";
import { anchorName, askMark, type Mark, markIn, newKey, setMark } from "../mark";
import { checkUnchanged } from "../read/check-unchanged";
import { inExcel, type Patience } from "../run";
import { putValues } from "./cells";
import { readStanding, type Standing } from "./standing";
import { TableNames } from "./tables";
import { unsetInWords } from "./trimmings";
import type { ValueBlock } from "./value-blocks";
import { type AddedSheet, withdraw } from "./withdraw";
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
  const marks = marksOf(sheets, standing, label);
  const tableNames = new TableNames(standing.tableNames);
  const added: AddedSheet[] = [];
  const unset: string[] = [];
  try {
    for (const [done, sheet] of sheets.entries()) {
      options.onProgress({ step: "Adding the sheets", done, of: sheets.length });
      const mark = marks[done] as Mark;
      const add = (first: ValueBlock | null) => addSheet(mark, first, added, patience, options);
      unset.push(...(await writeSheet(add, sheet, read.dateSystem, tableNames, patience, options)));
    }
    options.signal.throwIfAborted();
    await finish(marks, added, patience, options);
    options.signal.throwIfAborted();
    return { sheets: marks.map(({ name }) => name), label, ...unsetInWords(unset) };
  } catch (error) {
    return withdraw(added, error, patience, options);
  }
}

function marksOf(sheets: readonly SheetOut[], standing: Standing, label: string): Mark[] {
  const names = freshNames(sheets, standing);
  const run = Math.max(0, ...standing.sheets.map(({ mark, unsure }) => (mark ?? unsure)?.run ?? 0)) + 1;
  const key = newKey();
  return names.map((name, at) => ({
    ...{ kind: "report", run, label, key: `${key}-${at + 1}`, name, id: "", whole: false },
  }));
}

export function freshNames(sheets: readonly Pick<SheetOut, "name">[], { sheets: standing }: Standing): string[] {
  const taken = standing.map(({ name }) => name);
  return safeSheetNames([...taken, ...sheets.map(({ name }) => name)]).slice(taken.length);
}

/** Name, mark and first content go in one request, so that no sheet stands without its mark; gives its id. */
export async function addSheet(
  mark: Mark,
  first: ValueBlock | null,
  added: AddedSheet[],
  patience: Patience,
  options?: JobOptions,
): Promise<string> {
  const asked: AddedSheet = { name: mark.name, key: mark.key };
  added.push(asked);
  asked.id = await inExcel(
    async (context, attempt) => {
      const there = attempt > 0 ? await addedBefore(context, mark) : null;
      const sheet = there ?? context.workbook.worksheets.add(mark.name);
      setMark(sheet, mark);
      if (first) putValues(sheet, first);
      sheet.load("id");
      await context.sync();
      return sheet.id;
    },
    patience,
    options,
  );
  return asked.id;
}

/** What an earlier try of the same request did of its work. */
async function addedBefore(context: Excel.RequestContext, { name, key }: Mark): Promise<Excel.Worksheet | null> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(name).load("id");
  await context.sync();
  if (sheet.isNullObject) return null;
  const property = askMark(sheet);
  const used = sheet.getUsedRangeOrNullObject(true).load("rowIndex");
  await context.sync();
  if (markIn(property)?.key === key || (property.isNullObject && used.isNullObject)) return sheet;
  throw new HostFailure("changed meanwhile", "A sheet of this name was added meanwhile. Try once more.");
}

/** From here on the run counts as whole: its names lead to its sheets, and their marks say so. */
export async function finish(
  marks: readonly Mark[],
  added: readonly AddedSheet[],
  patience: Patience,
  options?: JobOptions,
): Promise<void> {
  await inExcel(
    async (context) => {
      const { worksheets, names } = context.workbook;
      const standing = marks.map(({ key }) => names.getItemOrNullObject(anchorName(key)).load("name"));
      await context.sync();
      options?.signal.throwIfAborted();
      for (const [at, mark] of marks.entries()) {
        const sheet = worksheets.getItem(added[at]?.id as string);
        if (standing[at]?.isNullObject) names.add(anchorName(mark.key), sheet.getRange()).visible = false;
        setMark(sheet, { ...mark, id: added[at]?.id as string, whole: true });
      }
      await context.sync();
    },
    patience,
    options,
  );
}
