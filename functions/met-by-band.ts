import { inCells } from "./answer";
import { bandCells } from "./convert/band-cells";
import { contextOf } from "./convert/records";
import { settingsOf } from "./convert/settings";
import { remembered } from "./memo";

/**
 * How many children have met each skill, by age group.
 * @customfunction METBYBAND
 * @cancelable
 * @param children The Children table with its headings
 * @param observations The Observations table with its headings
 * @param skills The Skills table with its headings
 * @param asOf The day the figures are true for
 * @param [by] Headings of Children to group by, such as Site
 * @param [settings] Two columns, names and values of settings
 * @returns A row for each skill and age group with children, then for each area, below a header row
 */
export function metByBand(
  children: any[][],
  observations: any[][],
  skills: any[][],
  asOf: any,
  by?: any[][],
  settings?: any[][],
): any[][] {
  return inCells(() =>
    remembered("METBYBAND", [children, observations, skills, asOf, by, settings], () =>
      bandCells(contextOf({ children, observations, skills }, settingsOf(asOf, settings, by))),
    ),
  );
}
