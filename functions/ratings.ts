import { inCells } from "./answer";
import { categoryCell, scaleFrom, statementCells } from "./convert/rating-cells";
import { spread } from "./convert/spread";

/**
 * The progress category of an entry and an exit level.
 * @customfunction PROGRESSCATEGORY
 * @cancelable
 * @param entryLevel Level at entry, or a column of them
 * @param exitLevel Level at exit
 * @param gainedAnySkill Whether the child gained any skill since entry: yes or no
 * @param [levels] How many levels your scale has, 2 to 10; 5 when left out
 * @param [peerLevel] The lowest level that means: as children of the same age; 5 when left out
 * @returns a, b, c, d or e; "a or b" where it depends on an answer that is blank
 */
export function progressCategory(
  entryLevel: any[][],
  exitLevel: any[][],
  gainedAnySkill: any[][],
  levels?: any,
  peerLevel?: any,
): any[][] {
  return inCells(() => {
    const scale = scaleFrom(levels, peerLevel);
    return spread({ entryLevel, exitLevel, gainedAnySkill }, (cells) => categoryCell(cells, scale));
  });
}

/**
 * The two summary statements of progress categories.
 * @customfunction SUMMARYSTATEMENTS
 * @cancelable
 * @param categories A column of categories: a to e, or "a or b"
 * @returns Statement, count, of, percent: a row for each of the two
 */
export function summaryStatements(categories: any[][]): any[][] {
  return inCells(() => statementCells(categories));
}
