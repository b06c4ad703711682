import { type ProgressCategory, progressCategory } from "../../src/records/services/progress-category";
import { summaryStatements } from "../../src/statistics/summary-statements";
import type { AnswerCell } from "../answer";
import { invalid, outOfRange } from "../failure";
import { columnOf, type InCell, isBlank, isEmpty } from "./cells";
import { eachRow } from "./each-row";
import { numberFrom, wordFrom } from "./values";

const CATEGORIES = ["a", "b", "c", "d", "e"] as const;

/** Blank where a rating is blank or 0, or where the category hangs on an answer that is. */
export function categoryCell(
  cells: Readonly<Record<"entryRating" | "exitRating" | "newSinceEntry", InCell>>,
): AnswerCell {
  if (isEmpty(cells.entryRating) || isEmpty(cells.exitRating)) return null;
  const entry = ratingFrom(cells.entryRating, "entryRating");
  const exit = ratingFrom(cells.exitRating, "exitRating");
  return progressCategory(entry, exit, answerFrom(cells.newSinceEntry));
}

/** Statement, Count, Of, Percent for each statement; blank cells are not counted, and a percent of nobody is blank. */
export function statementCells(categories: unknown): AnswerCell[][] {
  const given = eachRow(columnOf(categories, "categories"), (cell) => (isEmpty(cell) ? null : categoryFrom(cell)));
  const count = (wanted: ProgressCategory) => given.filter((each) => each === wanted).length;
  const statements = summaryStatements([count("a"), count("b"), count("c"), count("d"), count("e")]);
  return statements.map(({ statement, count: counted, of, percent }) => [statement, counted, of, percent]);
}

function ratingFrom(cell: InCell, name: string): number {
  const rating = numberFrom(cell, name);
  if (!Number.isInteger(rating)) throw invalid(`${name} is a whole number from 1 to 7.`);
  if (rating < 1 || rating > 7) throw outOfRange(`${name} goes from 1 to 7.`);
  return rating;
}

/** A true or false of the sheet, or a word; null where it is empty, also where an empty cell is handed over as 0. */
function answerFrom(cell: InCell): boolean | null {
  if (typeof cell === "boolean") return cell;
  if (isBlank(cell) || isEmpty(cell)) return null;
  const word = wordFrom(cell);
  if (["yes", "y", "true", "1"].includes(word)) return true;
  if (["no", "n", "false"].includes(word)) return false;
  throw invalid("newSinceEntry is yes or no.");
}

function categoryFrom(cell: InCell): ProgressCategory {
  const found = CATEGORIES.find((category) => category === wordFrom(cell));
  if (found === undefined) throw invalid("a category is a, b, c, d or e.");
  return found;
}
