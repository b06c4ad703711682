/// <reference types="office-js" />
import type { DateSystem } from "../../../age/serial";
import type { JobOptions } from "../../../workbook/host";
import type { SheetOut } from "../../../workbook/sheets";
import type { Patience } from "../run";
import { lookAreas } from "./look-areas";
import { applyLook } from "./looks";
import { doSteps } from "./steps";
import { type ValueBlock, valueBlocks } from "./value-blocks";

/**
 * Writes values and looks, block by block: one request for the values of a block, then its looks. The first block goes with
 * the request that adds the sheet; gives the sheet's id.
 */
export async function writeCells(
  add: (first: ValueBlock | null) => Promise<string>,
  sheet: SheetOut,
  dateSystem: DateSystem,
  patience: Patience,
  options?: JobOptions,
): Promise<string> {
  let sheetId: string | null = null;
  for (const block of valueBlocks(sheet, dateSystem)) {
    if (sheetId === null) sheetId = await add(block);
    else await doSteps(sheetId, [(target) => putValues(target, block)], patience, options);
    if (block.left > 0) continue;
    const looks = lookAreas(sheet, block.top, block.top + block.values.length - 1);
    const steps = looks.map((look) => (target: Excel.Worksheet) => applyLook(target, look));
    await doSteps(sheetId, steps, patience, options);
  }
  return sheetId ?? add(null);
}

export function putValues(sheet: Excel.Worksheet, { top, left, values }: ValueBlock): void {
  const columns = values[0]?.length ?? 0;
  sheet.getRangeByIndexes(top, left, values.length, columns).values = values.map((row) => [...row]);
}
