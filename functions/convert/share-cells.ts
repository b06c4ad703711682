import { observedExpected } from "../../src/statistics/poisson";
import { shareDifference, shareInterval, type ShareMethod } from "../../src/statistics/share";
import type { AnswerCell } from "../answer";
import { notEstimable, outOfRange } from "../failure";
import { type InCell, isBlank } from "./cells";
import { blankRow } from "./spread";
import { countFrom, numberFrom } from "./values";

export const SHARE_METHODS = ["wilson", "exact", "mid-p"] as const;

/** Share, Lower, Upper; blank where no count is given. */
export function shareCells(count: InCell, of: InCell, level: number, method: ShareMethod): AnswerCell[] {
  if (isBlank(count)) return blankRow(3);
  const { share, lower, upper } = shareInterval(...countOf(count, "count", of, "of"), level, method);
  if (share === null) throw notEstimable("of is 0: there is nothing to take a share of.");
  return [share, lower, upper];
}

/** Difference, Lower, Upper; blank where neither count is given. */
export function differenceCells(cells: Readonly<Record<"count1" | "of1" | "count2" | "of2", InCell>>, level: number) {
  if (isBlank(cells.count1) && isBlank(cells.count2)) return blankRow(3);
  const first = countOf(cells.count1, "count1", cells.of1, "of1");
  const second = countOf(cells.count2, "count2", cells.of2, "of2");
  const { difference, lower, upper } = shareDifference(...first, ...second, level);
  if (difference === null) throw notEstimable("of1 or of2 is 0: there is nothing to take a share of.");
  return [difference, lower, upper];
}

/** Ratio, Lower, Upper, p; blank where nothing observed is given. */
export function ratioCells(observed: InCell, expected: InCell, level: number): AnswerCell[] {
  if (isBlank(observed)) return blankRow(4);
  const count = countFrom(observed, "observed");
  const expectedCount = numberFrom(expected, "expected");
  if (expectedCount < 0) throw outOfRange("expected cannot be below 0.");
  const { ratio, lower, upper, p } = observedExpected(count, expectedCount, level);
  if (ratio === null) throw notEstimable("expected is 0: there is nothing to compare with.");
  return [ratio, lower, upper, p];
}

function countOf(countCell: InCell, countName: string, ofCell: InCell, ofName: string): [number, number] {
  const [count, of] = [countFrom(countCell, countName), countFrom(ofCell, ofName)];
  if (count > of) throw outOfRange(`${countName} is more than ${ofName}: check both.`);
  return [count, of];
}
