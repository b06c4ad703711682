import { inCells } from "./answer";
import { categoryCell, statementCells } from "./convert/rating-cells";
import { spread } from "./convert/spread";

/**
 * The progress category of an entry and an exit rating.
 * @customfunction PROGRESSCATEGORY
 * @param entryRating Rating at entry, 1 to 7, or a column of them
 * @param exitRating Rating at exit, 1 to 7
 * @param newSinceEntry Whether the child gained any skill since entry: yes or no
 * @returns a, b, c, d or e; blank where it hangs on an answer that is blank
 */
export function progressCategory(entryRating: any[][], exitRating: any[][], newSinceEntry: any[][]): any[][] {
  return inCells(() => spread({ entryRating, exitRating, newSinceEntry }, categoryCell));
}

/**
 * The two summary statements of progress categories.
 * @customfunction SUMMARYSTATEMENTS
 * @param categories A column of categories, a to e
 * @returns Statement, count, of, percent: a row for each of the two
 */
export function summaryStatements(categories: any[][]): any[][] {
  return inCells(() => statementCells(categories));
}
