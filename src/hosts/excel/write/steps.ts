/// <reference types="office-js" />
import type { JobOptions } from "../../../workbook/host";
import { inExcel, type Patience } from "../run";

/** Something done to a sheet in a few calls that need no answer. */
export type Step = (sheet: Excel.Worksheet, context: Excel.RequestContext) => void;

/** A step takes some 3 KB of a request; this many stay below 300 KB. */
const STEPS_AT_ONCE = 100;

/** Does steps in their order, many to a request. */
export async function doSteps(
  sheetId: string,
  steps: readonly Step[],
  patience: Patience,
  options?: JobOptions,
): Promise<void> {
  for (let first = 0; first < steps.length; first += STEPS_AT_ONCE) {
    const some = steps.slice(first, first + STEPS_AT_ONCE);
    await inExcel(
      async (context) => {
        const sheet = context.workbook.worksheets.getItem(sheetId);
        for (const step of some) step(sheet, context);
        await context.sync();
      },
      patience,
      options,
    );
  }
}
