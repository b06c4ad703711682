import {
  REACHED_BY_AGE_COLUMNS,
  REACHED_BY_AGE_NOTES,
  REACHED_BY_AGE_POPULATION,
  REACHED_BY_AGE_TITLE,
} from "../../tables/reached-by-age";
import type { DraftEntry, DraftTable } from "../release-table";
import type { Drafting } from "./drafting";
import { EdgeCells } from "./edge-cells";
import { EDGE } from "./edge-columns";
import { draftRow } from "./entries";
import type { EverFollowed } from "./ever-followed";
import { flagShare } from "./whole-groups";

const ID = "reached-by-age";
const ESTIMATED = ["estimate", "lower", "upper"];

/** Table 2 without what is estimated. */
export function draftReachedByAge(drafting: Drafting, ever: EverFollowed): DraftTable {
  const { groups } = drafting.context;
  const cells = new EdgeCells(drafting, ever);
  const columns = [...groups.columns, ...REACHED_BY_AGE_COLUMNS.filter(({ key }) => !ESTIMATED.includes(key))];
  const rows = ever.groups().flatMap(({ group, scope }) =>
    cells.each().map(({ skill, edge }) => {
      cells.addRow(scope, skill, edge);
      return rowOf(drafting, cells, columns, { group, scope, skill, edge });
    }),
  );
  ever.totals().forEach((scope) => cells.addTotals(scope));
  return {
    id: ID,
    title: REACHED_BY_AGE_TITLE,
    population: REACHED_BY_AGE_POPULATION,
    columns,
    rows,
    notes: REACHED_BY_AGE_NOTES,
  };
}

interface EdgeRow {
  readonly group: number;
  readonly scope: number;
  readonly skill: number;
  readonly edge: number;
}

function rowOf(drafting: Drafting, cells: EdgeCells, columns: DraftTable["columns"], at: EdgeRow): DraftEntry[] {
  const { builder, context } = drafting;
  const cell = (column: number) => cells.cell(at.scope, at.skill, at.edge, column) as number;
  const [met, notMet, notKnown, children] = [
    cell(EDGE.met),
    cell(EDGE.notMet),
    cell(EDGE.notKnown),
    cells.children(at.scope),
  ];
  const count = (index: number) => builder.at(index).count as number;
  const [n, without] = [count(children), count(notMet)];
  flagShare(drafting, `${ID}: ${cells.rowWords(at.scope, at.skill, at.edge)}`, { met, of: children });
  const head = [
    ...(context.groups.values[at.group] ?? []),
    context.cohort.skills[at.skill]!.id,
    context.settings.edges[at.edge]!,
  ];
  const values = [...head, n, count(met), without, count(notKnown), count(met) / n, (count(met) + count(notKnown)) / n];
  return draftRow(builder, columns, values, {
    counts: { children, met, notMet, notKnown },
    figures: { lowest: [met, children], highest: [notMet, children] },
  });
}
