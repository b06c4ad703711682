import { expectedByNow as expectedByNowTable } from "../src/tables/expected-by-now";
import { inCells } from "./answer";
import { contextOf } from "./convert/records";
import { settingsOf } from "./convert/settings";
import { tableCells } from "./convert/table-cells";
import { remembered } from "./memo";

/**
 * How many children have met each skill whose expected window has closed for them.
 * @customfunction EXPECTEDBYNOW
 * @cancelable
 * @param children The Children table with its headings
 * @param observations The Observations table with its headings
 * @param skills The Skills table with its headings
 * @param asOf The day the figures are true for
 * @param [settings] Two columns, names and values of settings
 * @returns A row for each skill, then for each area and kind of window, below a header row
 */
export function expectedByNow(
  children: any[][],
  observations: any[][],
  skills: any[][],
  asOf: any,
  settings?: any[][],
): any[][] {
  return inCells(() =>
    remembered("EXPECTEDBYNOW", [children, observations, skills, asOf, settings], () =>
      tableCells(expectedByNowTable(contextOf({ children, observations, skills }, settingsOf(asOf, settings)))),
    ),
  );
}
