import type { Day } from "../../age/day";
import { a1Range, CELL, type Grid } from "../../workbook/cells";
import { fileOf } from "../../workbook/sources";
import type { CellRange, WorkbookIn } from "../../workbook/workbook";
import type { Place } from "../findings/collector";
import type { TableUse } from "../records";
import { ruleOf } from "../findings/rules";
import type { TableName } from "../tables/spec";
import { totalsBySum, totalsByWord } from "./totals";
import { headingKey, isBlankText } from "../cells/words";

/** A table found on a sheet: where its headings stand, and which of its rows hold something. */
export interface Block extends Place {
  readonly table: TableName;
  readonly grid: Grid;
  /** Where its file has another date system than the workbook says. */
  readonly dateSystem?: WorkbookIn["dateSystem"];
  /** The headings and everything below them that belongs to the table. */
  readonly range: CellRange;
  /** The first row below the headings. */
  readonly firstRow: number;
  /** Sheet column by the key of the column. */
  readonly columns: ReadonlyMap<string, number>;
  /** Columns with headings of their own. */
  readonly further: readonly FurtherColumn[];
  /** Headings that are not read, and of which nobody said so. */
  readonly unread: readonly UnreadColumn[];
  /** Columns that two headings claim, by their key. */
  readonly contested: ReadonlySet<string>;
  /** Skill columns of a wide sheet. */
  readonly wide: readonly WideColumn[];
  /** What every row says of a column that is not there, by its key: the name of the sheet, where that was settled. */
  readonly constants: ReadonlyMap<string, string>;
  /** The site is only taken from the name of the file. */
  readonly siteFromFile?: true;
  /** What the title above each row says of a column, where that was settled. */
  readonly above: { readonly key: string; readonly byRow: ReadonlyMap<number, string> } | null;
  /** The day of all checks of a grid that has no column of days; null usually. */
  readonly day: Day | null;
  /** Cells of a grid that are no blanks by what a person settled. */
  readonly says: { readonly zero: boolean; readonly blank: boolean };
  /** Sheet rows that hold something and are not totals. */
  readonly rows: Int32Array;
  readonly totals: readonly number[];
}

/** In place of a column: what is said by the name of the sheet. */
export const SHEET_COLUMN = -1;

export interface FurtherColumn {
  readonly heading: string;
  /** SHEET_COLUMN: the name of the sheet. */
  readonly column: number;
}

export interface UnreadColumn extends FurtherColumn {
  readonly row: number;
}

export interface WideColumn {
  /** Index into the skills, or the negative code of a skill that is left out. */
  readonly skill: number;
  readonly heading: string;
  readonly column: number;
  /** The column with the days on which this one skill was checked; undefined where it has none of its own. */
  readonly days?: number;
}

/**
 * The rows of a range that hold something, those of totals and those that say the headings again apart. A row of zeros is blank: some hosts hand blanks over as 0.
 *
 * @param child - the column of the child, where it is known: a row without one whose numbers sum up the rows above is a total too
 */
export function rowsOf(grid: Grid, range: CellRange, firstRow: number, totalsRow: number | null, child?: number) {
  const filled = filledRows(grid, range, firstRow);
  const isTotal = totalsByWord(grid, range, child);
  const rows: number[] = [];
  const totals: number[] = [];
  const repeated: number[] = [];
  for (let row = firstRow; row <= range.bottom; row += 1) {
    if (filled[row - firstRow] === 0) continue;
    if (saysHeadings(grid, range, firstRow - 1, row)) repeated.push(row);
    else (row === totalsRow || isTotal(row) ? totals : rows).push(row);
  }
  const sums = child === undefined ? [] : totalsBySum(grid, range, rows, child);
  return {
    rows: Int32Array.from(sums.length > 0 ? rows.filter((row) => !sums.includes(row)) : rows),
    totals: sums.length > 0 ? [...totals, ...sums].sort((a, b) => a - b) : totals,
    repeated,
  };
}

/** Whether a row repeats the row of headings, as on each page of a long list. */
function saysHeadings(grid: Grid, { left, right }: CellRange, header: number, row: number): boolean {
  let same = 0;
  for (let column = left; column <= right; column += 1) {
    const cells = grid.columns[column];
    if (cells?.kinds[row] === undefined || cells.kinds[row] === CELL.empty) continue;
    if (cells.kinds[row] !== CELL.text || cells.kinds[header] !== CELL.text) return false;
    const [own, above] = [row, header].map((at) => grid.strings[cells.values[at] as number] as string);
    if (own !== above && !isSameHeading(own as string, above as string)) return false;
    same += 1;
  }
  return same >= FEWEST_AGAIN;
}

function isSameHeading(a: string, b: string): boolean {
  const key = headingKey(a);
  return key !== "" && key === headingKey(b);
}

const FEWEST_AGAIN = 2;

/** Counts what becomes of the rows of one table. */
export class Tally {
  private readonly leftOut = new Map<string, number>();
  private left = 0;

  constructor(
    private readonly place: Place,
    private readonly range: CellRange,
    private readonly rows: number,
  ) {}

  leave(rule: string, rows = 1): void {
    const { reason } = ruleOf(rule);
    this.left += rows;
    this.leftOut.set(reason, (this.leftOut.get(reason) ?? 0) + rows);
  }

  use(): TableUse {
    const { top, left, bottom, right } = this.range;
    const reasons = [...this.leftOut].sort(([a], [b]) => (a < b ? -1 : 1));
    return {
      table: this.place.table,
      ...fileOf(this.place),
      sheet: this.place.sheetName,
      address: a1Range(top, left, bottom, right),
      rows: this.rows,
      used: this.rows - this.left,
      leftOut: Object.fromEntries(reasons),
    };
  }
}

function filledRows(grid: Grid, range: CellRange, firstRow: number): Uint8Array {
  const filled = new Uint8Array(Math.max(0, range.bottom - firstRow + 1));
  for (let column = range.left; column <= range.right; column += 1) {
    const cells = grid.columns[column];
    if (!cells) continue;
    const end = Math.min(range.bottom + 1, cells.kinds.length);
    for (let row = firstRow; row < end; row += 1) {
      const kind = cells.kinds[row] as number;
      if (kind === CELL.empty || filled[row - firstRow] === 1) continue;
      const value = cells.values[row] as number;
      if (kind === CELL.number ? value !== 0 : kind !== CELL.text || !isBlankText(grid.strings[value] as string)) {
        filled[row - firstRow] = 1;
      }
    }
  }
  return filled;
}
