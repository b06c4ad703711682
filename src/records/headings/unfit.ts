import { a1Range } from "../../workbook/cells";
import { fileOf, placeInWords } from "../../workbook/sources";
import type { CellRange, SheetIn, WorkbookIn } from "../../workbook/workbook";
import type { FindingCollector, Place } from "../findings/collector";
import { headerCells } from "./header-cells";
import { type HeaderCell, type HeadingMatch, matchHeadings } from "./headings";
import type { Region } from "./region";
import { type DecidedHeadings, specNamed } from "./table-match";
import type { TableSpec } from "../tables/spec";

/** Headings that look like those of a table, without all that it needs. */
interface Unfit {
  readonly place: Place;
  readonly range: CellRange;
  readonly cells: readonly HeaderCell[];
  readonly match: HeadingMatch;
}

const ROWS_LOOKED_AT = 50;

/** Where a table is looked for: sheets with their index in the workbook, and what was found on them. */
interface Places {
  /** One of several files alone: rows of a table that was found there are rows, whatever they say. */
  readonly isOneOfSeveral: boolean;
  readonly sheets: readonly (readonly [sheet: SheetIn, index: number])[];
  readonly regions: readonly Region[];
}

/** @param file - one of several files; all of them where it is left out */
export function placesIn(workbook: WorkbookIn, regions: readonly Region[], file?: string): Places {
  const isHere = (sheet: SheetIn) => file === undefined || sheet.file === file;
  return {
    isOneOfSeveral: file !== undefined,
    sheets: workbook.sheets.flatMap((sheet, index) => (isHere(sheet) ? [[sheet, index] as const] : [])),
    regions: regions.filter(({ sheet }) => isHere(sheet)),
  };
}

/**
 * Lists what keeps a table from being read, and says it in a sentence; null where nothing looks like the table.
 *
 * The headings of a sheet that a person said is something are those of no other table.
 *
 * @param wide - regions that are read as wide sheets: their headings too are those of no other table
 */
export function explainUnfit(
  findings: FindingCollector,
  places: Places,
  spec: TableSpec,
  decided: DecidedHeadings,
  wide: ReadonlySet<Region>,
): string | null {
  const found = places.regions.filter((each) => each.spec !== null || each.settled !== null || wide.has(each));
  const taken = places.isOneOfSeveral ? found.map((each) => ({ ...each, firstRow: each.range.bottom + 1 })) : found;
  const unfit = namedRegion(places.regions, spec) ?? likeliestRow(places.sheets, taken, spec, decided);
  if (!unfit) return null;
  const wanted = unfit.match.missing.map((column) => column.heading).join(", ");
  const detail = { expected: `the heading ${wanted}` };
  const suspects = [...unfit.match.unmatched, ...unfit.match.twice];
  if (suspects.length === 0) findings.range("heading-unknown", unfit.place, unfit.range, detail);
  unfit.match.unmatched.forEach((cell) => findings.cell("heading-unknown", unfit.place, cell.row, cell.column, detail));
  unfit.match.twice.forEach((cell) => findings.cell("heading-twice", unfit.place, cell.row, cell.column));
  const { top, left, right } = unfit.range;
  const where = placeInWords({ ...unfit.place, sheet: unfit.place.sheetName }, a1Range(top, left, top, right));
  return `${spec.name}: in ${where} the heading ${wanted} was not found, or matches two columns. Rename the heading, or settle it with a correction of the heading.`;
}

function namedRegion(regions: readonly Region[], spec: TableSpec): Unfit | null {
  const region = regions.find((each) => each.spec === spec && (each.match?.missing.length ?? 0) > 0);
  if (!region?.match) return null;
  const { sheet, sheetIndex, range, cells, match } = region;
  const place = placeOf(spec, sheet, sheetIndex);
  return { place, range: { ...range, bottom: range.top }, cells, match };
}

function placeOf({ name }: TableSpec, sheet: SheetIn, index: number): Place {
  return { table: name, sheet: index, sheetName: sheet.name, ...fileOf(sheet) };
}

/** The row that carries the most headings of the table: two at least, or one on a sheet with its name. */
function likeliestRow(
  sheets: Places["sheets"],
  taken: readonly Region[],
  spec: TableSpec,
  decided: DecidedHeadings,
): Unfit | null {
  let best: Unfit | null = null;
  sheets.forEach(([sheet, index]) => {
    const least = specNamed(sheet.name) === spec ? 1 : 2;
    for (let row = 0; row < Math.min(ROWS_LOOKED_AT, sheet.grid.rowCount); row += 1) {
      if (taken.some((each) => each.sheet === sheet && row >= each.range.top && row < each.firstRow)) continue;
      const cells = headerCells(sheet, row, 1, 0, sheet.grid.columns.length - 1);
      const match = matchHeadings(spec, cells, decided.get(spec.name));
      if (match.columns.size < Math.max(least, (best?.match.columns.size ?? 0) + 1)) continue;
      const columns = cells.map((cell) => cell.column);
      const range = { top: row, bottom: row, left: columns[0] as number, right: columns.at(-1) as number };
      best = { place: placeOf(spec, sheet, index), range, cells, match };
    }
  });
  return best;
}
