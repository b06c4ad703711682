import { attain } from "../../cohort/attainment";
import { NO_DAY } from "../../records/records";
import { groupOfFollowed } from "../../tables/context";
import { metByBand, metByBandLeft } from "../../tables/met-by-band";
import type { ReleasableId, Table } from "../../tables/table";
import type { DraftTable } from "../release-table";
import { BoxCells } from "./box-cells";
import { AT } from "./box-columns";
import type { Standing } from "./box-tally";
import { type Drafting, isoDates } from "./drafting";
import { draftRow, type RowCells } from "./entries";
import { periodTo } from "./keys";
import { flagShare } from "./whole-groups";

/** Children followed on the as-of date, in their boxes by age band. */
export function followedCells(drafting: Drafting): BoxCells {
  const { context } = drafting;
  const groupOf = groupOfFollowed(context);
  const dayOf = new Int32Array(groupOf.length).fill(context.asOf);
  const population = { population: "followed", when: isoDates(context).asOf, table: "met-by-band" };
  return new BoxCells(drafting, population, { groupOf, dayOf, attainment: context.attainment });
}

export function draftMetByBand(drafting: Drafting, cells: BoxCells): DraftTable {
  return draftBands(drafting, cells, metByBand(drafting.context));
}

/** The same for children who left in the period. */
export function draftMetByBandLeft(drafting: Drafting, cells: BoxCells): DraftTable {
  return draftBands(drafting, cells, metByBandLeft(drafting.context));
}

/** Children who left in the period, in their boxes by age band. */
export function leftCells(drafting: Drafting, standing: Standing): BoxCells {
  const { from, asOf } = drafting.context;
  const population = { population: "left", ...periodTo(from, asOf), table: "met-by-band-left" };
  return new BoxCells(drafting, population, standing);
}

/** Children who left in the period, each on the last day. */
export function leftStanding({ context }: Drafting): Standing {
  const { cohort, groups, from, asOf } = context;
  const dayOf = Int32Array.from(cohort.ids, (_, child) => cohort.following.lastDayIfLeft(child, from, asOf) ?? NO_DAY);
  const groupOf = dayOf.map((day, child) =>
    day === NO_DAY ? -1 : (groups.ofEnrolment[cohort.following.enrolmentOn(child, day)] as number),
  );
  return { groupOf, dayOf, attainment: attain(cohort, dayOf) };
}

interface BandRow {
  readonly scope: number;
  readonly row: number;
  readonly band: number;
}

/** In the order of the table: groups, and in each its skills and then its areas, band by band. */
function draftBands(drafting: Drafting, cells: BoxCells, table: Table<ReleasableId>): DraftTable {
  const { builder, scopes } = drafting;
  const printed = rowsOf(drafting, cells);
  printed.forEach(({ scope, row, band }) => cells.addRow(scope, row, band));
  printed.forEach(({ scope, row, band }) => {
    if (cells.isArea(row)) cells.addAreaSums(scope, row, band);
  });
  const rows = printed.map((at, index) => {
    flagShare(drafting, cells.rowPlace(at.scope, at.row, at.band), {
      met: cells.cell(at.scope, at.row, at.band, AT.met),
      of: cells.cell(at.scope, at.row, at.band, AT.assessed),
    });
    return draftRow(builder, table.columns, table.rows[index] ?? [], cellsOf(cells, at));
  });
  scopes.list.forEach((_, scope) => addTotals(drafting, cells, scope));
  const { id, title, population, columns, notes } = table;
  return { id, title, population, columns, rows, notes };
}

function rowsOf({ context, scopes }: Drafting, cells: BoxCells): BandRow[] {
  return context.groups.values.flatMap((_, group) => {
    const scope = scopes.list.findIndex((each) => each.group === group);
    return heldRows(cells, scope);
  });
}

function heldRows(cells: BoxCells, scope: number): BandRow[] {
  const { rowCount, allAges } = cells.tally;
  return Array.from({ length: rowCount * allAges }, (_, at) => ({
    scope,
    row: Math.floor(at / allAges),
    band: at % allAges,
  })).filter(({ row, band }) => cells.isHeld(scope, row, band));
}

/** What nobody prints and everybody can add up: over groups, and over all ages. */
function addTotals({ scopes }: Drafting, cells: BoxCells, scope: number): void {
  if (scopes.list[scope]?.group === null) {
    for (const { row, band } of heldRows(cells, scope)) cells.addScopeTotals(scope, row, band);
  }
  for (let row = 0; row < cells.tally.rowCount; row += 1) {
    if (cells.isHeld(scope, row, cells.tally.allAges)) cells.addAgeTotals(scope, row);
  }
}

/** A share gives its numerator back beside its denominator, and so do its limits; the highest share what is left over. */
function cellsOf(cells: BoxCells, { scope, row, band }: BandRow): RowCells {
  const cell = (key: keyof typeof AT) => cells.cell(scope, row, band, AT[key]);
  const [children, assessed, met] = [cell("children"), cell("assessed"), cell("met")];
  const boxes = ["hadAtFirstLook", "gained", "notMet", "outOfDate", "lost", "notAssessed"] as const;
  return {
    counts: { ...Object.fromEntries(boxes.map((key) => [key, cell(key)])), children, assessed, met },
    figures: {
      shareMet: [met, assessed],
      lower: [met, assessed],
      upper: [met, assessed],
      lowest: [met, children],
      highest: [children, assessed, met],
    },
  };
}
