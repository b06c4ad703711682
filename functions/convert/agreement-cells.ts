import { agreement } from "../../src/statistics/agreement";
import type { AnswerCell } from "../answer";
import { invalid, notEstimable } from "../failure";
import { columnOf, isEmpty } from "./cells";
import { wordFrom } from "./values";

/** n, Percent, Kappa, Lower, Upper over the pairs of which neither is blank; a result of 0 is an empty cell. */
export function agreementCells(firstArgument: unknown, secondArgument: unknown): AnswerCell[][] {
  const [first, second] = [columnOf(firstArgument, "first"), columnOf(secondArgument, "second")];
  if (first.length !== second.length) {
    throw invalid(`first has ${first.length} rows and second has ${second.length}: give both the same.`);
  }
  const isPair = first.map((cell, at) => !isEmpty(cell) && !isEmpty(second[at] ?? null));
  const ofPairs = (cells: typeof first) => cells.filter((_, at) => isPair[at]).map(wordFrom);
  const { n, percent, kappa, lower, upper, reason } = agreement(ofPairs(first), ofPairs(second));
  if (percent === null) throw notEstimable("No row has a result of both.");
  const unknown = notEstimable(reason ?? "");
  return [[n, percent, kappa ?? unknown, lower ?? unknown, upper ?? unknown]];
}
