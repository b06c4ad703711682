import { dayFromIso, isoOf } from "../../age/day";
import { CELL, type Grid, kindAt, stringAt } from "../../workbook/cells";
import { fileOf } from "../../workbook/sources";
import {
  type Block,
  type FurtherColumn,
  rowsOf,
  SHEET_COLUMN,
  Tally,
  type UnreadColumn,
  type WideColumn,
} from "./block";
import type { FindingCollector } from "../findings/collector";
import { headingKeys, type HeadingMatch, matchHeadings } from "./headings";
import type { KeyLookup } from "../cells/ids";
import type { Region } from "./region";
import { ID_CODE } from "../cells/ids";
import { wideCells } from "../observations/read-wide";
import { resultOf } from "../cells/result-words";
import { ruleOf } from "../findings/rules";
import { specOf } from "../tables";
import type { TableName } from "../tables/spec";
import { shownText } from "../cells/cell-text";
import { displayOf, keyOf } from "../cells/words";
import { GROUP } from "../corrections/settled";
import { canGroup, neverGroups } from "./can-group";
import { rowTitles, titleOfRows } from "./row-titles";

export interface Counted {
  readonly block: Block;
  readonly tally: Tally;
}

/** A table that was found, with its rows counted and those of totals left out. */
export function blockOf(
  findings: FindingCollector,
  region: Region,
  table: TableName,
  match: HeadingMatch,
  wide: readonly WideColumn[] = [],
  says: Block["says"] = { zero: false, blank: false },
): Counted {
  const { sheet, sheetIndex, firstRow } = region;
  const counted = rowsOf(sheet.grid, region.range, firstRow, region.totalsRow, match.columns.get("child"));
  const { totals, repeated } = counted;
  const titled = withoutTitles(region, counted.rows);
  const rows = region.settled?.repeats ? firstOfEachRow(sheet.grid, titled.rows, match) : titled.rows;
  const further = furtherColumns(region, match, wide, rows);
  const last = Math.max(firstRow - 1, rows.at(-1) ?? 0, ...totals, ...repeated);
  const block: Block = {
    table,
    sheet: sheetIndex,
    sheetName: sheet.name,
    ...fileOf(sheet),
    ...(sheet.dateSystem === undefined ? {} : { dateSystem: sheet.dateSystem }),
    grid: sheet.grid,
    range: { ...region.range, bottom: last },
    firstRow,
    columns: match.columns,
    further,
    contested: contestedColumns(table, match),
    unread: unreadColumns(region, match, wide, further),
    constants: constantsOf(region),
    above: titled.above,
    day: region.settled?.day ?? null,
    says,
    wide,
    rows,
    totals,
  };
  const count = wide.length > 0 ? wideCells(block) : rows.length + totals.length;
  const tally = new Tally(block, block.range, count);
  totals.forEach((row) => {
    findings.cell("total-row", block, row, block.range.left);
    if (wide.length === 0) tally.leave("total-row");
  });
  repeated.forEach((row) => findings.cell("heading-again", block, row, block.range.left));
  listOtherDay(findings, block, region);
  if (rows.length === 0) findings.range("table-empty", block, { ...block.range, bottom: firstRow - 1 });
  match.twice.forEach((cell) => findings.cell("heading-twice", block, cell.row, cell.column));
  listBeside(findings, block, region, match);
  return { block, tally };
}

/** The rows without those that hold a title and nothing else, where a person said what such a title is. */
function withoutTitles(
  { settled, sheet, range }: Region,
  rows: Int32Array,
): { rows: Int32Array; above: Block["above"] } {
  const key = settled?.rowTitle ?? null;
  if (key === null) return { rows, above: null };
  const titles = rowTitles(sheet.grid, range.left, range.right, rows);
  return { rows: rows.filter((row) => !titles.has(row)), above: { key, byRow: titleOfRows(titles, rows) } };
}

/** A title that says another day than the one that a person gave for the checks below it. */
function listOtherDay(findings: FindingCollector, block: Block, { settled }: Region): void {
  const said = settled?.titleDay ?? null;
  if (said === null || block.day === null) return;
  const advice = `The title says ${said}; the checks are counted on ${isoOf(block.day)}. Give the right day in the understanding.`;
  findings.range("day-in-title", block, { ...block.range, bottom: block.firstRow - 1 }, { advice });
}

/** The same grid where a legend of the workbook says what 0 stands for: its zeros are results, not blanks. */
export function withZeros({ block }: Counted): Counted {
  const counting = { ...block, says: { ...block.says, zero: true } };
  return { block: counting, tally: new Tally(counting, counting.range, wideCells(counting)) };
}

/** Headings of the table past one column without a heading: a gap that was not meant. */
function listBeside(findings: FindingCollector, block: Block, region: Region, match: HeadingMatch): void {
  let next = region.range.right + 2;
  const read = matchHeadings(specOf(block.table), region.beside);
  for (const cell of region.beside) {
    if (cell.column !== next) continue;
    next += 1;
    const key = [...read.columns].find(([, column]) => column === cell.column)?.[0];
    if (key !== undefined && !match.columns.has(key)) findings.cell("heading-beside", block, cell.row, cell.column);
  }
}

/** The headings of a region that are ids or labels of skills. */
export function skillColumns(match: HeadingMatch, lookup: KeyLookup): WideColumn[] {
  return match.unmatched.flatMap((cell) => {
    const skill = lookup(keyOf(cell.text), cell.text);
    return skill >= 0 || skill === ID_CODE.leftOut ? [{ skill, heading: cell.text, column: cell.column }] : [];
  });
}

/**
 * Headings of a wide sheet that are no skill although their cells hold dates or results: a skill that Skills does not
 * hold, whose cells would otherwise be dropped without a word.
 */
export function unknownSkillColumns(region: Region, match: HeadingMatch, known: readonly WideColumn[]): WideColumn[] {
  return match.unmatched
    .filter((cell) => !known.some(({ column }) => column === cell.column) && looksObserved(region, cell.column))
    .map((cell) => ({ skill: ID_CODE.unknown, heading: cell.text, column: cell.column }));
}

/** True where every filled cell is a date, ISO text or a word for a result. */
function looksObserved({ sheet: { grid }, firstRow, range }: Region, column: number): boolean {
  let filled = 0;
  for (let row = firstRow; row <= range.bottom; row += 1) {
    const kind = kindAt(grid, row, column);
    const text = kind === CELL.text ? stringAt(grid, row, column).trim() : "";
    if (kind === CELL.empty || (kind === CELL.text && text === "")) continue;
    if (kind !== CELL.date && dayFromIso(text) === null && resultOf(text) === null) return false;
    filled += 1;
  }
  return filled > 0;
}

/** Whether rows were left out for no more than the days that were asked for, or (`also`) for rules that follow from them. */
export function onlyByChoice(leftOut: Readonly<Record<string, number>>, also: readonly string[] = []): boolean {
  const chosen = ["date-after-as-of", "entered-after-cut-off", ...also].map((rule) => ruleOf(rule).reason);
  return Object.keys(leftOut).every((reason) => chosen.includes(reason));
}

/** The columns under headings of their own. In Children those that children can be grouped by. */
function furtherColumns(
  region: Region,
  match: HeadingMatch,
  wide: readonly WideColumn[],
  rows: Int32Array,
): FurtherColumn[] {
  const taken = new Set(wide.map(({ column }) => column));
  const { settled, sheet } = region;
  const own = match.unmatched
    .filter((cell) => !taken.has(cell.column))
    .filter(({ column, text }) =>
      settled ? settled.groups.has(column) : !neverGroups(text) && canGroup(sheet.grid, column, rows),
    )
    .map((cell) => ({ heading: cell.text, column: cell.column }));
  return settled?.sheetName === GROUP ? [...own, { heading: "Sheet", column: SHEET_COLUMN }] : own;
}

function contestedColumns(table: TableName, { twice }: HeadingMatch): ReadonlySet<string> {
  const keys = twice.flatMap((cell) => cell.keys);
  const columns = specOf(table).columns.filter((column) => headingKeys(column).some((key) => keys.includes(key)));
  return new Set(columns.map(({ key }) => key));
}

function unreadColumns(
  { settled }: Region,
  match: HeadingMatch,
  wide: readonly WideColumn[],
  further: readonly FurtherColumn[],
): UnreadColumn[] {
  const known = new Set([...wide, ...further].map(({ column }) => column));
  return match.unmatched
    .filter(({ column }) => !known.has(column) && !settled?.seen.has(column))
    .map((cell) => ({ heading: cell.text, column: cell.column, row: cell.row }));
}

/** The name of the sheet, where a person said that it stands for a column. */
function constantsOf({ settled, sheet }: Region): ReadonlyMap<string, string> {
  return settled?.sheetName ? new Map([[settled.sheetName, displayOf(sheet.name)]]) : new Map<string, string>();
}

/** The first row of each child of a table whose rows say the same child again and again. */
function firstOfEachRow(grid: Grid, rows: Int32Array, { columns }: HeadingMatch): Int32Array {
  const seen = new Set<string>();
  return rows.filter((row) => {
    const signature = JSON.stringify([...columns.values()].map((column) => keyOf(shownText(grid, row, column))));
    return !seen.has(signature) && seen.add(signature);
  });
}
