import {
  REACHED_BY_AGE_COLUMNS,
  REACHED_BY_AGE_NOTES,
  REACHED_BY_AGE_POPULATION,
  REACHED_BY_AGE_TITLE,
} from "../../tables/reached-by-age";
import type { DraftEntry, DraftTable } from "../release-table";
import type { Drafting } from "./drafting";
import { EDGE, EDGE_COLUMNS } from "./edge-columns";
import { EdgeTally } from "./edge-tally";
import { draftRow } from "./entries";
import type { EverFollowed } from "./ever-followed";
import { keyOf } from "./keys";
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

class EdgeCells {
  private readonly tally: EdgeTally;

  constructor(
    private readonly drafting: Drafting,
    private readonly ever: EverFollowed,
  ) {
    this.tally = new EdgeTally(drafting, ever.groupOf);
  }

  /** Skills and edges, in the order of the table. */
  each(): { readonly skill: number; readonly edge: number }[] {
    const { cohort, settings } = this.drafting.context;
    return cohort.skills.flatMap((_, skill) => settings.edges.map((__, edge) => ({ skill, edge })));
  }

  children(scope: number): number {
    return this.ever.children(scope, this.isPrinted(scope) ? ID : null);
  }

  /** Null where there is no such count at the edge. */
  cell(scope: number, skill: number, edge: number, column: number): number | null {
    const { builder, context, scopes, skills, tags } = this.drafting;
    const { column: key, words, printed, loss, agesOf } = EDGE_COLUMNS[column]!;
    const ages = agesOf(context.settings.edges, edge);
    if (ages === null) return null;
    const isGroup = this.isPrinted(scope);
    const hidesZero =
      context.settings.wholeGroups === "hide" && isGroup && (column === EDGE.met || column === EDGE.notYet);
    const head = { ...this.ever.keyHead(), group: scopes.list[scope]!.key, tag: tags.attained };
    return builder.cell({
      key: keyOf({ ...head, subject: skills[skill] as string, ages, column: key }),
      place: `${ID}: ${this.rowWords(scope, skill, edge)}, ${words}`,
      ...this.tally.of(scope, skill, edge, column),
      showing: printed && isGroup ? "table" : "never",
      loss,
      zeroIsSecret: hidesZero,
    });
  }

  addRow(scope: number, skill: number, edge: number): void {
    const { builder } = this.drafting;
    const cell = (column: number, at = edge) => this.cell(scope, skill, at, column) as number;
    builder.adds(this.children(scope), [cell(EDGE.met), cell(EDGE.notMet), cell(EDGE.notKnown)]);
    builder.adds(cell(EDGE.notYet), [cell(EDGE.notMet), cell(EDGE.notKnown)]);
    builder.adds(cell(EDGE.possible), [cell(EDGE.met), cell(EDGE.notKnown)]);
    if (edge + 1 >= this.drafting.context.settings.edges.length) return;
    builder.adds(cell(EDGE.met, edge + 1), [cell(EDGE.met), cell(EDGE.metBetween)]);
    builder.adds(cell(EDGE.notMet), [cell(EDGE.notMet, edge + 1), cell(EDGE.notMetBetween)]);
  }

  addTotals(scope: number): void {
    const { builder } = this.drafting;
    const parts = this.ever.partsOf(scope);
    builder.adds(
      this.children(scope),
      parts.map((part) => this.children(part)),
    );
    for (const { skill, edge } of this.each()) {
      EDGE_COLUMNS.forEach((_, column) => {
        const whole = this.cell(scope, skill, edge, column);
        if (whole !== null)
          builder.adds(
            whole,
            parts.map((part) => this.cell(part, skill, edge, column) as number),
          );
      });
    }
  }

  /** `North, sits, by 6 months`. */
  rowWords(scope: number, skill: number, edge: number): string {
    const { context, scopes } = this.drafting;
    const { words } = scopes.list[scope]!;
    return [words, context.cohort.skills[skill]!.id, `by ${context.settings.edges[edge]} months`]
      .filter((each) => each !== "")
      .join(", ");
  }

  private isPrinted(scope: number): boolean {
    return this.drafting.scopes.list[scope]!.group !== null;
  }
}
