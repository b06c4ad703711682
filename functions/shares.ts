import { inCells } from "./answer";
import { levelOf, wordOf } from "./convert/options";
import { differenceCells, ratioCells, SHARE_METHODS, shareCells } from "./convert/share-cells";
import { spreadRows } from "./convert/spread";

/**
 * A share with its confidence limits.
 * @customfunction SHARE
 * @cancelable
 * @param count How many of them, or a column of counts
 * @param of How many there are in all
 * @param [level] Confidence level; 0.95 when left out
 * @param [method] "wilson" (usual), "exact" or "mid-p"
 * @returns Share, lower and upper limit, each from 0 to 1
 */
export function share(count: any[][], of: any[][], level?: any, method?: any): any[][] {
  return inCells(() => {
    const [at, by] = [levelOf(level), wordOf(method, "method", SHARE_METHODS)];
    return spreadRows({ count, of }, 3, (cells) => shareCells(cells.count, cells.of, at, by));
  });
}

/**
 * The first share less the second, with confidence limits.
 * @customfunction SHAREDIFFERENCE
 * @cancelable
 * @param count1 How many of the first group, or a column of counts
 * @param of1 How many there are in the first group
 * @param count2 How many of the second group
 * @param of2 How many there are in the second group
 * @param [level] Confidence level; 0.95 when left out
 * @returns Difference, lower and upper limit, each from -1 to 1
 */
export function shareDifference(count1: any[][], of1: any[][], count2: any[][], of2: any[][], level?: any): any[][] {
  return inCells(() => {
    const at = levelOf(level);
    return spreadRows({ count1, of1, count2, of2 }, 3, (cells) => differenceCells(cells, at));
  });
}

/**
 * How many were observed for each one expected, with confidence limits.
 * @customfunction OBSERVEDEXPECTED
 * @cancelable
 * @param observed A count, or a column of counts
 * @param expected How many were expected
 * @param [level] Confidence level; 0.95 when left out
 * @returns Ratio, lower and upper limit, p
 */
export function observedExpected(observed: any[][], expected: any[][], level?: any): any[][] {
  return inCells(() => {
    const at = levelOf(level);
    return spreadRows({ observed, expected }, 4, (cells) => ratioCells(cells.observed, cells.expected, at));
  });
}
