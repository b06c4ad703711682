import { inCells } from "./answer";
import { changedCells } from "./convert/changed-cells";
import { remembered } from "./memo";

/**
 * Why counts of skills changed between two days: who joined, left or grew older, what was met or lost since.
 * @customfunction CHANGED
 * @cancelable
 * @param earlier What SKILLSTATUS gave for the earlier day, with its headings
 * @param later What SKILLSTATUS gave for the later day, with the same settings
 * @param [edges] Months at which age groups begin; 0, 3, 6, 9, 12, 18, 24, 36 when left out
 * @returns A row for each skill, age group and count: earlier, what was added and taken away, and later
 */
export function changed(earlier: any[][], later: any[][], edges?: any[][]): any[][] {
  return inCells(() => remembered("CHANGED", [earlier, later, edges], () => changedCells(earlier, later, edges)));
}
