import { GridBuilder } from "../../../workbook/grid-builder";
import { HostFailure, type JobOptions } from "../../../workbook/host";
import type { SheetIn, WorkbookIn } from "../../../workbook/workbook";
import type { Patience } from "../run";
import { type Outline, readOutline, type SheetOutline } from "./outline";
import { readCells } from "./read-cells";

/** More than an hour of reading, and more than the pane can hold. */
const MOST_CELLS = 20_000_000;

export async function readWorkbook(patience: Patience, options: JobOptions): Promise<WorkbookIn> {
  const outline = await readOutline(patience, options);
  const total = cellsOf(outline);
  if (total > MOST_CELLS) {
    throw new HostFailure(
      "too large",
      "The used cells of this workbook are more than 20 million. Delete what lies far outside the tables, or run the command line on the saved file.",
    );
  }
  const sheets: SheetIn[] = [];
  let done = 0;
  for (const sheet of outline.sheets) {
    const builder = new GridBuilder();
    await readCells(sheet.id, sheet.used, builder, patience, options, (cells) => {
      done += cells;
      options.onProgress({ step: "Reading the sheets", done, of: total });
    });
    const { name, tables, merged } = sheet;
    sheets.push({ name, grid: builder.build(), tables, merged });
  }
  return { dateSystem: outline.dateSystem, sheets };
}

function cellsOf({ sheets }: Outline): number {
  return sheets.reduce((sum, sheet) => sum + sizeOf(sheet), 0);
}

function sizeOf({ used }: SheetOutline): number {
  return (used.bottom - used.top + 1) * (used.right - used.left + 1);
}
