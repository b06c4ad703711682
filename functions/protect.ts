import { inCells } from "./answer";
import { protectCells, provableCells } from "./convert/protect-cells";
import { remembered } from "./memo";

/**
 * Counts made ready to leave the program: small ones hidden, and as little else as keeps them from being worked out.
 * @customfunction PROTECT
 * @cancelable
 * @param counts Counts, without totals
 * @param [minimum] The smallest count that may show; 11 when left out
 * @returns The counts with a total column and a total row, * where hidden
 */
export function protect(counts: any[][], minimum?: any): any[][] {
  return inCells(() => remembered("PROTECT", [counts, minimum], () => protectCells(counts, minimum)));
}

/**
 * What a reader who sees everything that is not hidden can work out of each hidden count.
 * @customfunction PROVABLE
 * @cancelable
 * @param counts The true counts, without totals
 * @param hidden TRUE where a count is hidden: as large as counts, or one row and column larger for hidden totals
 * @returns Row, column, lowest and highest count that can be proved; highest blank where there is no end
 */
export function provable(counts: any[][], hidden: any[][]): any[][] {
  return inCells(() => remembered("PROVABLE", [counts, hidden], () => provableCells(counts, hidden)));
}
