import { type CategoryOrOpen, progressCategory, type RatingScale } from "../../src/records/services/progress-category";
import { usualSettings } from "../../src/settings/settings";
import { summaryStatements } from "../../src/statistics/summary-statements";
import type { AnswerCell } from "../answer";
import { invalid, outOfRange } from "../failure";
import { columnOf, type InCell, isBlank, isEmpty, singleOf } from "./cells";
import { eachRow } from "./each-row";
import { numberFrom, wordFrom } from "./values";

const CATEGORIES: readonly CategoryOrOpen[] = ["a", "b", "a or b", "c", "d", "e"];
const USUAL_SCALE: RatingScale = { levels: usualSettings.ratingLevels, peerLevel: usualSettings.peerLevel };
const MOST_LEVELS = 10;

/** The scale of two arguments that may be left out. */
export function scaleFrom(levels: unknown, peerLevel: unknown): RatingScale {
  const scale = {
    levels: wholeFrom(levels, "levels") ?? USUAL_SCALE.levels,
    peerLevel: wholeFrom(peerLevel, "peerLevel") ?? USUAL_SCALE.peerLevel,
  };
  if (scale.levels < 2 || scale.levels > MOST_LEVELS) throw outOfRange(`levels goes from 2 to ${MOST_LEVELS}.`);
  if (scale.peerLevel < 2 || scale.peerLevel > scale.levels) {
    throw outOfRange(`peerLevel goes from 2 to ${scale.levels}, the number of levels.`);
  }
  return scale;
}

/** Blank where a level is blank or 0; "a or b" where the category depends on an answer that is blank. */
export function categoryCell(
  cells: Readonly<Record<"entryLevel" | "exitLevel" | "gainedAnySkill", InCell>>,
  scale: RatingScale,
): AnswerCell {
  if (isEmpty(cells.entryLevel) || isEmpty(cells.exitLevel)) return null;
  const entry = levelFrom(cells.entryLevel, "entryLevel", scale);
  const exit = levelFrom(cells.exitLevel, "exitLevel", scale);
  return progressCategory(entry, exit, answerFrom(cells.gainedAnySkill), scale);
}

/** Statement, Count, Of, Percent for each statement; blank cells are not counted, and a percent of nobody is blank. */
export function statementCells(categories: unknown): AnswerCell[][] {
  const given = eachRow(columnOf(categories, "categories"), (cell) => (isEmpty(cell) ? null : categoryFrom(cell)));
  const count = (wanted: CategoryOrOpen) => given.filter((each) => each === wanted).length;
  const counts = { a: count("a"), b: count("b"), aOrB: count("a or b"), c: count("c"), d: count("d"), e: count("e") };
  return summaryStatements(counts).map(({ statement, count: counted, of, percent }) => [
    statement,
    counted,
    of,
    percent,
  ]);
}

function levelFrom(cell: InCell, name: string, { levels }: RatingScale): number {
  const level = numberFrom(cell, name);
  if (!Number.isInteger(level)) throw invalid(`${name} is a whole number from 1 to ${levels}.`);
  if (level < 1 || level > levels) {
    throw outOfRange(`${name} goes from 1 to ${levels}. Say with the argument levels how many your scale has.`);
  }
  return level;
}

/** Null where the argument is left out. */
function wholeFrom(argument: unknown, name: string): number | null {
  const cell = singleOf(argument, name);
  if (isEmpty(cell)) return null;
  const number = numberFrom(cell, name);
  if (!Number.isInteger(number)) throw invalid(`${name} is a whole number.`);
  return number;
}

/** A true or false of the sheet, or a word; null where it is empty, also where an empty cell is handed over as 0. */
function answerFrom(cell: InCell): boolean | null {
  if (typeof cell === "boolean") return cell;
  if (isBlank(cell) || isEmpty(cell)) return null;
  const word = wordFrom(cell);
  if (["yes", "y", "true", "1"].includes(word)) return true;
  if (["no", "n", "false"].includes(word)) return false;
  throw invalid("gainedAnySkill is yes or no.");
}

function categoryFrom(cell: InCell): CategoryOrOpen {
  const found = CATEGORIES.find((category) => category === wordFrom(cell));
  if (found === undefined) throw invalid("a category is a, b, c, d, e or a or b.");
  return found;
}
