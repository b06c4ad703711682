import { type Timing, timingOf, type WindowEdges, windowStatus } from "../../src/cohort/window";
import { invalid } from "../failure";
import { type InCell, isBlank, isEmpty } from "./cells";
import { numberFrom, numberOrBlank } from "./values";

export interface WindowCells {
  readonly months: InCell;
  readonly opens: InCell;
  readonly closes: InCell;
  readonly metMonths: InCell;
  readonly notMetMonths: InCell;
}

const TIMING_WORDS: Readonly<Record<Timing, string>> = {
  early: "met early",
  "in window": "met in window",
  late: "met late",
  "not known": "met, timing not known",
};

/**
 * Where an age stands against a window, or whether a skill was met early, in it or late. For the closing 0 is
 * an empty cell; for the other ages 0 is an age (a skill that was there at birth is met at 0 months). Null without an age, or without a window.
 */
export function windowCell(cells: WindowCells): string | null {
  if (isBlankRow(cells)) return null;
  const window = windowFrom(cells);
  if (isBlank(cells.metMonths)) return windowStatus(numberFrom(cells.months, "months"), window);
  const metMonths = numberFrom(cells.metMonths, "metMonths");
  if (!isEmpty(cells.months) && metMonths > numberFrom(cells.months, "months")) {
    throw invalid("metMonths is above months: the skill cannot have been seen after the age that is asked about.");
  }
  const withoutMonths = numberOrBlank(cells.notMetMonths, "notMetMonths") ?? metMonths;
  if (withoutMonths > metMonths) {
    throw invalid("notMetMonths is above metMonths: give the last age without the skill before it was seen.");
  }
  const timing = timingOf(withoutMonths, metMonths, window);
  return timing === null ? null : TIMING_WORDS[timing];
}

function isBlankRow({ months, opens, closes, metMonths, notMetMonths }: WindowCells): boolean {
  if (isBlank(months) && isBlank(metMonths)) return true;
  return [months, opens, closes, metMonths, notMetMonths].every(isEmpty);
}

function windowFrom({ opens, closes }: WindowCells): WindowEdges {
  const opensMonths = numberOrBlank(opens, "opens");
  const closesMonths = isEmpty(closes) ? null : numberFrom(closes, "closes");
  if (opensMonths !== null && closesMonths !== null && closesMonths <= opensMonths) {
    throw invalid("closes must come after opens: correct one of the two.");
  }
  return { opensMonths, closesMonths };
}
