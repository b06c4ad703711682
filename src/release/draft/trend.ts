import { attain } from "../../cohort/attainment";
import { NOT_FOLLOWED } from "../../cohort/following";
import { isoOf } from "../../age/day";
import { trend } from "../../tables/trend";
import { lastQuarters, type Quarter } from "../../tables/trend-quarters";
import type { DraftTable } from "../release-table";
import { BoxCells } from "./box-cells";
import { AT, ROW_SUMS } from "./box-columns";
import { type Drafting } from "./drafting";
import { draftRow, type RowCells } from "./entries";
import { flagShare } from "./whole-groups";

const NOTES: readonly string[] = [
  "Each quarter shows the children in the program on its last day (the last quarter: on the as-of date), over all ages, with the checks up to that day. Quarters next to each other share most of their children.",
  "All quarters are counted with the skills and settings of this release.",
  "A provisional quarter still waits for checks to be entered. A share also moves with the ages of the children in the program.",
];

const COLUMNS = [AT.children, AT.met, AT.assessed, AT.without, AT.unknown, AT.notYet, AT.possible];
/** Rows of a trend have no boxes. */
const SUMS = ROW_SUMS.filter(([whole, parts]) => [whole, ...parts].every((column) => COLUMNS.includes(column)));

/**
 * Table 8, whose notes with counts and days stay behind.
 *
 * @param withBands - the as-of date is counted by age band too: its sums are there already
 */
export function draftTrend(drafting: Drafting, withBands: boolean): DraftTable {
  const { context, scopes } = drafting;
  const table = trend(context);
  const quarters = lastQuarters(context.asOf).map((quarter) => ({ quarter, cells: quarterCells(drafting, quarter) }));
  const rows = context.groups.values.flatMap((_, group) => {
    const scope = scopes.list.findIndex((each) => each.group === group);
    return quarters.flatMap(({ quarter, cells }) =>
      heldSkills(drafting, cells, scope).map((skill) => ({ quarter, cells, scope, skill })),
    );
  });
  for (const { quarter, cells } of quarters) addSums(drafting, cells, !(withBands && quarter.day === context.asOf));
  const { id, title, population, columns } = table;
  const drafted = rows.map(({ cells, scope, skill }, at) => {
    const own = cellsOf(cells, scope, skill);
    flagShare(drafting, cells.rowPlace(scope, skill, cells.tally.allAges), {
      met: own.counts["met"]!,
      of: own.counts["assessed"]!,
    });
    return draftRow(drafting.builder, columns, table.rows[at] ?? [], own);
  });
  return { id, title, population, columns, rows: drafted, notes: NOTES };
}

function quarterCells(drafting: Drafting, { label, day }: Quarter): BoxCells {
  const { cohort, groups } = drafting.context;
  const groupOf = Int32Array.from(cohort.ids, (_, child) => {
    const row = cohort.following.enrolmentOn(child, day);
    return row === NOT_FOLLOWED ? -1 : (groups.ofEnrolment[row] as number);
  });
  const population = { population: "followed", when: isoOf(day), table: `trend, ${label}` };
  const dayOf = new Int32Array(groupOf.length).fill(day);
  return new BoxCells(drafting, population, { groupOf, dayOf, attainment: attain(cohort, day) });
}

function heldSkills({ context }: Drafting, cells: BoxCells, scope: number): number[] {
  return [...context.cohort.skills.keys()].filter((skill) => cells.isHeld(scope, skill, cells.tally.allAges));
}

function addSums(drafting: Drafting, cells: BoxCells, alsoTotals: boolean): void {
  const all = cells.tally.allAges;
  drafting.scopes.list.forEach(({ group }, scope) => {
    for (const skill of heldSkills(drafting, cells, scope)) {
      if (group !== null)
        COLUMNS.forEach((column) => cells.cell(scope, skill, all, column, PRINTED.has(column) ? "printed" : "row"));
      if (!alsoTotals) continue;
      if (group === null) cells.addScopeTotals(scope, skill, all, COLUMNS);
      else SUMS.forEach(([whole, parts]) => cells.addSum(scope, skill, all, whole, parts));
    }
  });
}

const PRINTED = new Set([AT.children, AT.met, AT.assessed]);

function cellsOf(cells: BoxCells, scope: number, skill: number): RowCells {
  const cell = (column: number) => cells.cell(scope, skill, cells.tally.allAges, column);
  const [children, met, assessed] = [cell(AT.children), cell(AT.met), cell(AT.assessed)];
  const share = [met, assessed];
  return { counts: { children, met, assessed }, figures: { shareMet: share, lower: share, upper: share } };
}
