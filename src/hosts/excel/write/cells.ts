/// <reference types="office-js" />
import type { DateSystem } from "../../../age/serial";
import type { JobOptions } from "../../../workbook/host";
import type { SheetOut } from "../../../workbook/sheets";
import type { Patience } from "../run";
import { lookAreas } from "./look-areas";
import { applyLook } from "./looks";
import { doSteps } from "./steps";
import { type Blank, type ValueBlock, valueBlocks } from "./value-blocks";

/** Writes values and looks, block by block: one request for the values of a block, then its looks. */
export async function writeCells(
  sheetId: string,
  sheet: SheetOut,
  dateSystem: DateSystem,
  blank: Blank,
  patience: Patience,
  options?: JobOptions,
): Promise<void> {
  for (const block of valueBlocks(sheet, dateSystem, blank)) {
    await doSteps(sheetId, [(target) => putValues(target, block)], patience, options);
    if (block.left > 0) continue;
    const looks = lookAreas(sheet, block.top, block.top + block.values.length - 1);
    const steps = looks.map((look) => (target: Excel.Worksheet) => applyLook(target, look));
    await doSteps(sheetId, steps, patience, options);
  }
}

function putValues(sheet: Excel.Worksheet, { top, left, values }: ValueBlock): void {
  const columns = values[0]?.length ?? 0;
  sheet.getRangeByIndexes(top, left, values.length, columns).values = values.map((row) => [...row]);
}
