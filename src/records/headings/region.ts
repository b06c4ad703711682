import type { Day } from "../../age/day";
import type { CellRange, SheetIn } from "../../workbook/workbook";
import type { SheetDecision } from "../corrections/decisions";
import type { TableSpec } from "../tables/spec";
import { headerCells } from "./header-cells";
import type { HeaderCell, HeadingMatch } from "./headings";
import { specNamed } from "./table-match";

/** A place that looks like a table: headings, and the rows below them that may belong to it. */
export interface Region {
  readonly sheetIndex: number;
  readonly sheet: SheetIn;
  readonly cells: readonly HeaderCell[];
  readonly range: CellRange;
  readonly firstRow: number;
  readonly totalsRow: number | null;
  /** The table that it is, by its name or by its headings; null where the headings fit none. */
  readonly spec: TableSpec | null;
  readonly match: HeadingMatch | null;
  /** Headings beside it in the same row that belong to no table. */
  readonly beside: readonly HeaderCell[];
  /** What a person settled of it; null where it is read by its headings alone. */
  readonly settled: SettledRegion | null;
}

export interface SettledRegion {
  readonly decision: SheetDecision;
  /** Columns whose heading the person saw. */
  readonly seen: ReadonlySet<number>;
  /** Columns of Children to group by. */
  readonly groups: ReadonlySet<number>;
  /** The skill of each column of a grid. */
  readonly skills: ReadonlyMap<number, string>;
  /** The columns that hold the days of one skill, by that skill. */
  readonly daysOf: ReadonlyMap<string, number>;
  /** The day of all checks of a grid, where the person gave it. */
  readonly day: Day | null;
  /** The day that the title says, where it is another one; null usually. */
  readonly titleDay: string | null;
  /** The column key that the name of the sheet stands for: a column of the table, or "Group"; null usually. */
  readonly sheetName: string | null;
  /** The column key that the titles between the rows stand for; null usually. */
  readonly rowTitle: string | null;
  /** The rows say the same child again and again, since another table shares them. */
  readonly repeats: boolean;
}

/** A free region ends above the next region that shares a column with it, and above that one's title. */
export function bounded(region: Region, all: readonly Region[]): CellRange {
  const { top, left, right } = region.range;
  const nextTops = all
    .filter((other) => other.sheet === region.sheet && other.range.top > top)
    .filter((other) => other.range.left <= right && other.range.right >= left)
    .map((other) => (titleAbove(other) ? other.range.top - 1 : other.range.top));
  const bottom = Math.min(region.range.bottom, ...nextTops.map((next) => next - 1));
  return { ...region.range, bottom: Math.max(bottom, region.firstRow - 1) };
}

function titleAbove(region: Region): boolean {
  const row = region.range.top - 1;
  if (row < 0) return false;
  const texts = headerCells(region.sheet, row, 1, region.range.left, region.range.right);
  return texts.length === 1 && specNamed((texts[0] as HeaderCell).text) !== null;
}
