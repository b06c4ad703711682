import { skillStatus as skillStatusTable } from "../src/tables/skill-status";
import { inCells } from "./answer";
import { attainmentCells } from "./convert/attainment-cells";
import { contextOf } from "./convert/records";
import { settingsOf } from "./convert/settings";
import { type Spilled, tableCells } from "./convert/table-cells";
import { remembered } from "./memo";

const STATUS_COLUMNS: readonly Spilled[] = [
  { key: "child", header: "Child" },
  { key: "skill", header: "Skill" },
  { key: "area", header: "Area" },
  { key: "ageMonths", header: "Age (months)" },
  { key: "window", header: "Window" },
  { key: "box", header: "Box" },
  { key: "timing", header: "Timing" },
  { key: "metAfter", header: "Met after" },
  { key: "metBy", header: "Met by" },
  { key: "lastLook", header: "Last checked" },
];

/**
 * The status of each child in each skill on a day. Internal: each row is one child.
 * @customfunction SKILLSTATUS
 * @cancelable
 * @param children The Children table with its headings
 * @param observations The Observations table with its headings
 * @param skills The Skills table with its headings
 * @param asOf The day the figures are true for
 * @param [settings] Two columns, names and values of settings
 * @returns A row for each child in the program that day and each skill, below a header row
 */
export function skillStatus(
  children: any[][],
  observations: any[][],
  skills: any[][],
  asOf: any,
  settings?: any[][],
): any[][] {
  return inCells(() =>
    remembered("SKILLSTATUS", [children, observations, skills, asOf, settings], () =>
      tableCells(
        skillStatusTable(contextOf({ children, observations, skills }, settingsOf(asOf, settings))),
        STATUS_COLUMNS,
      ),
    ),
  );
}

/**
 * Between which ages each child met each skill. Internal: each row is one child.
 * @customfunction ATTAINMENT
 * @cancelable
 * @param children The Children table with its headings
 * @param observations The Observations table with its headings
 * @param skills The Skills table with its headings
 * @param asOf The last day whose checks count
 * @param [settings] Two columns, names and values of settings
 * @returns Child, Skill, After and By in days of age, below a header row; By is blank where never seen
 */
export function attainment(
  children: any[][],
  observations: any[][],
  skills: any[][],
  asOf: any,
  settings?: any[][],
): any[][] {
  return inCells(() =>
    remembered("ATTAINMENT", [children, observations, skills, asOf, settings], () =>
      attainmentCells(contextOf({ children, observations, skills }, settingsOf(asOf, settings))),
    ),
  );
}
