import { inCells } from "./answer";
import { wordOf } from "./convert/options";
import { adjustedCells, ADJUSTMENTS } from "./convert/p-cells";

/**
 * Adjusts p values for how many of them there are.
 * @customfunction ADJUSTP
 * @cancelable
 * @param p A column of p values
 * @param [method] "holm" (usual) or "bh"
 * @returns The adjusted p values, in the order given
 */
export function adjustP(p: any[][], method?: any): any[][] {
  return inCells(() => adjustedCells(p, wordOf(method, "method", ADJUSTMENTS)));
}
