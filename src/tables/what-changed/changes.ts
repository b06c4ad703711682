import { bandLabel } from "../../age/bands";
import type { Day } from "../../age/day";
import { keyOf } from "../../records/cells/words";
import type { TableContext } from "../context";
import type { TableColumn } from "../table";
import { CellNames } from "./cell-names";
import type { BehindPart, ChangedCell, Changes } from "./changed-cell";
import { type Behind, Ledger } from "./ledger";
import { type Measure, MEASURES, type Part, PARTS } from "./parts";
import { NOWHERE, type Side, Standing } from "./standing";
import { stepOfDefinitions, stepOfRows, stepOfTime } from "./steps";

/** The counts of an earlier report, where its workbook is not at hand. */
export interface EarlierCounts {
  /** The headings that it groups by. */
  readonly by: readonly string[];
  readonly asOf: Day;
  readonly cells: readonly EarlierCell[];
}

export interface EarlierCell extends Readonly<Record<Measure, number>> {
  /** The values of the headings, in their order. */
  readonly group: readonly string[];
  readonly skill: string;
  readonly area: string;
  readonly band: string;
}

export type { Side };

/** What a change between two runs is followed through (METHOD.md, section 6). */
export interface Compared {
  /** The earlier records on their day under their settings, or only the counts of a report. */
  readonly earlier: Side | EarlierCounts;
  /** The later records on that day under those settings, with the earlier skills where they are known. */
  readonly laterUnderEarlier: Side;
  /** The later records on that day under the later settings. */
  readonly laterThen: Side;
  readonly later: Side;
  /** Whether the children behind each part are listed: internal. */
  readonly withChildren: boolean;
}

/** Follows every count of met-by-band from the earlier run to the later one, one cause at a time. */
export function changesBetween(compared: Compared): Changes {
  const { earlier, later } = compared;
  const columns = columnsOf(earlier, later.context);
  const [names, overall] = [new CellNames(columns), new CellNames([], true)];
  const found = followed(compared, names, compared.withChildren);
  return {
    columns,
    earlierDay: "cells" in earlier ? earlier.asOf : earlier.context.asOf,
    laterDay: later.context.asOf,
    isFromReport: "cells" in earlier,
    cells: found.cells,
    whole: followed(compared, overall, false).cells,
    behind: behindOf(names, found.ledger, compared),
  };
}

function followed(compared: Compared, names: CellNames, withChildren: boolean) {
  const { earlier } = compared;
  const isFromReport = "cells" in earlier;
  const ledger = new Ledger(withChildren);
  const end = new Standing(compared.later, names);
  const then = new Standing(compared.laterThen, names);
  const start = isFromReport ? addReport(ledger, names, compared, earlier) : addRows(ledger, names, compared, earlier);
  stepOfDefinitions(ledger, start.to, then);
  stepOfTime(ledger, then, end);
  const cells = cellsOf(names, ledger, { earlier: start.counts, later: countsOf(end) }, isFromReport);
  return { ledger, cells };
}

export type Counts = ReadonlyMap<number, Readonly<Record<Measure, number>>>;
type BothCounts = { readonly earlier: Counts; readonly later: Counts };
const NOBODY: Readonly<Record<Measure, number>> = { children: 0, assessed: 0, met: 0 };

/** What the first step leads from and to: the earlier counts, and the later workbook on the earlier day. */
interface Start {
  readonly counts: Counts;
  readonly to: Standing;
}

function addRows(ledger: Ledger, names: CellNames, { laterUnderEarlier }: Compared, earlier: Side): Start {
  const start = new Standing(earlier, names);
  const then = new Standing(laterUnderEarlier, names);
  stepOfRows(ledger, start, then);
  return { counts: countsOf(start), to: then };
}

/**
 * A report says how many, never who: the whole first step stands under "corrected". Its skills are known by name and area
 * alone; one that the later workbook no longer has goes with the definitions.
 */
function addReport(ledger: Ledger, names: CellNames, { laterUnderEarlier }: Compared, earlier: EarlierCounts): Start {
  const areas = new Map(earlier.cells.map(({ skill, area }) => [keyOf(skill), area]));
  const then = new Standing(laterUnderEarlier, names, ({ id }) => areas.get(keyOf(id)) ?? null);
  const counts = reportCounts(names, earlier, laterUnderEarlier.context);
  const now = countsOf(then);
  for (const cell of new Set([...counts.keys(), ...now.keys()])) {
    const part: Part = then.skillAt.has(keyOf(names.nameOf(cell).skill)) ? "corrected" : "definition";
    for (const measure of MEASURES) {
      const change = (now.get(cell)?.[measure] ?? 0) - (counts.get(cell)?.[measure] ?? 0);
      if (change !== 0) ledger.add(cell, measure, part, change, null);
    }
  }
  return { counts, to: then };
}

function reportCounts(names: CellNames, { by, cells }: EarlierCounts, { settings }: TableContext): Counts {
  const bands = new Map(
    [...settings.edges, Infinity].map((_, at) => [bandLabel(at, settings.edges), names.bandAt(at, settings.edges)]),
  );
  const counts = new Map<number, Readonly<Record<Measure, number>>>();
  for (const { group, skill, area, band, ...own } of cells) {
    const number = bands.get(band) ?? names.band(band, -Infinity, -Infinity);
    const cell = names.cell(names.group(by, group), names.skill(skill, area), number);
    counts.set(cell, sumOf(counts.get(cell) ?? NOBODY, own));
  }
  return counts;
}

function sumOf(a: Readonly<Record<Measure, number>>, b: Readonly<Record<Measure, number>>): Record<Measure, number> {
  return { children: a.children + b.children, assessed: a.assessed + b.assessed, met: a.met + b.met };
}

function countsOf(standing: Standing): Counts {
  const counts = new Map<number, Record<Measure, number>>();
  for (const child of standing.childAt.values()) {
    for (const skill of standing.skillAt.values()) {
      const cell = standing.cellOf(child, skill);
      if (cell === NOWHERE) continue;
      const sums = counts.get(cell) ?? { ...NOBODY };
      for (const measure of MEASURES) sums[measure] += standing.count(child, skill, measure);
      counts.set(cell, sums);
    }
  }
  return counts;
}

/** Every cell of either run, unchanged ones too; then, per area, the sums of its skills. */
export function cellsOf(
  names: CellNames,
  ledger: Ledger,
  { earlier, later }: BothCounts,
  isFromReport = false,
): ChangedCell[] {
  const ofSkills = [...new Set([...earlier.keys(), ...later.keys()])];
  for (const cell of ofSkills) ledger.addTo(names.overSkills(cell), cell);
  const [before, now] = [earlier, later].map((counts) => withAreas(names, counts)) as [Counts, Counts];
  return names.sorted([...new Set([...before.keys(), ...now.keys()])]).flatMap((cell) =>
    MEASURES.map((measure) => ({
      ...names.nameOf(cell),
      measure,
      earlier: before.get(cell)?.[measure] ?? 0,
      parts: ledger.partsOf(cell, measure).map((change, part) => (isFromReport && isUntold(part) ? null : change)),
      later: now.get(cell)?.[measure] ?? 0,
    })),
  );
}

/** Rows over the skills of an area count skill checks. */
function withAreas(names: CellNames, counts: Counts): Counts {
  const all = new Map(counts);
  for (const [cell, own] of counts) {
    const area = names.overSkills(cell);
    all.set(area, sumOf(all.get(area) ?? NOBODY, own));
  }
  return all;
}

/** A report alone cannot say whether a row came late or is gone. */
function isUntold(part: number): boolean {
  return PARTS[part] === "enteredLate" || PARTS[part] === "removed";
}

function columnsOf(earlier: Side | EarlierCounts, later: TableContext): TableColumn[] {
  const before = "cells" in earlier ? earlier.by : earlier.context.groups.columns.map(({ key }) => key);
  const own = later.groups.columns;
  const others = before.filter((heading) => !own.some(({ key }) => keyOf(key) === keyOf(heading)));
  return [...own, ...others.map((heading): TableColumn => ({ key: heading, label: heading, unit: "text" }))];
}

/** Every child behind every part, in the order of the table. */
function behindOf(names: CellNames, { behind }: Ledger, { earlier, later }: Compared): BehindPart[] {
  const sides = "cells" in earlier ? [later] : [earlier, later];
  const spelled = new Map(sides.flatMap(({ context }) => context.cohort.ids.map((id) => [keyOf(id), id] as const)));
  const cells = names.sorted([...new Set(behind.map(({ cell }) => cell))]);
  const placeOf = new Map(cells.map((cell, place) => [cell, place]));
  const order = (each: Behind) =>
    [placeOf.get(each.cell), MEASURES.indexOf(each.measure), PARTS.indexOf(each.part)] as number[];
  return [...behind]
    .sort((a, b) => compare([...order(a), a.child], [...order(b), b.child]))
    .map(({ cell, ...rest }) => ({ ...names.nameOf(cell), ...rest, child: spelled.get(rest.child) ?? rest.child }));
}

function compare(a: readonly (number | string)[], b: readonly (number | string)[]): number {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at < 0 ? 0 : (a[at] as number | string) < (b[at] as number | string) ? -1 : 1;
}
