import { inCells } from "./answer";
import { spread } from "./convert/spread";
import { windowCell } from "./convert/window-cell";

/**
 * How an age compares with the window of a skill, or whether the skill was met early, in the window or late.
 * @customfunction WINDOWSTATUS
 * @cancelable
 * @param months Age in months, or a column of ages
 * @param opens Months at which the window opens; blank where none is published
 * @param closes Months at which the window closes
 * @param [metMonths] Age at the check that first saw the skill; blank while not met
 * @param [notMetMonths] Last age without the skill before that look
 * @returns Such as in window, past window or met early
 */
export function windowStatus(
  months: any[][],
  opens: any[][],
  closes: any[][],
  metMonths?: any[][],
  notMetMonths?: any[][],
): any[][] {
  return inCells(() => spread({ months, opens, closes, metMonths, notMetMonths }, windowCell));
}
