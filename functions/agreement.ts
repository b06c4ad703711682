import { inCells } from "./answer";
import { agreementCells } from "./convert/agreement-cells";

/**
 * How often two observers gave the same result, beyond what chance would give.
 * @customfunction AGREEMENT
 * @cancelable
 * @param first Results of the first observer, a column
 * @param second Results of the second observer, in the same order
 * @returns Pairs, percent that agree, kappa and its lower and upper limit
 */
export function agreement(first: any[][], second: any[][]): any[][] {
  return inCells(() => agreementCells(first, second));
}
