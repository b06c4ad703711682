import type { SheetIn, TableIn, WorkbookIn } from "../../workbook/workbook";
import type { SheetDecision } from "../corrections/decisions";
import { fitDecisions } from "./fit-decisions";
import { headerCells } from "./header-cells";
import { anchorRows, bestHeader, type Header } from "./header-rows";
import { HeadingsSeen, matchHeadings } from "./headings";
import { bounded, type Region } from "./region";
import { settledRegions } from "./settled-regions";
import { type Found, splitHeader } from "./split-header";
import { bestSpec, type DecidedHeadings, specNamed } from "./table-match";

/**
 * Every region of the workbook, Excel tables first on their sheet, then headings wherever they stand. A sheet of which a
 * person settled what it is has the regions that were settled, and no others.
 */
export function findRegions(
  workbook: WorkbookIn,
  decided: DecidedHeadings,
  settled: readonly SheetDecision[] = [],
): Region[] {
  const fitted = settled.length > 0 ? fitDecisions(workbook, settled) : null;
  return workbook.sheets.flatMap((sheet, sheetIndex) => {
    const own = fitted?.get(sheetIndex);
    const isNamedOnce = workbook.sheets.every((each) => each === sheet || each.name !== sheet.name);
    if (own) return settledRegions({ sheet, sheetIndex, isNamedOnce }, own, sheet.dateSystem ?? workbook.dateSystem);
    const named = sheet.tables
      .filter((table) => table.headerRow)
      .map((table) => regionOf(sheet, sheetIndex, table, decided));
    const free = freeRegions(sheet, sheetIndex, decided);
    const all = [...named, ...free];
    return [...named, ...free.map((region) => ({ ...region, range: bounded(region, all) }))];
  });
}

function regionOf(sheet: SheetIn, sheetIndex: number, table: TableIn, decided: DecidedHeadings): Region {
  const { range } = table;
  const cells = headerCells(sheet, range.top, 1, range.left, range.right);
  const spec = specNamed(table.name);
  const found = spec ? { spec, match: matchHeadings(spec, cells, decided.get(spec.name)) } : bestSpec(cells, decided);
  return {
    sheetIndex,
    sheet,
    cells,
    range,
    firstRow: range.top + 1,
    totalsRow: table.totalsRow ? range.bottom : null,
    spec: found?.spec ?? null,
    match: found?.match ?? null,
    beside: [],
    settled: null,
  };
}

function freeRegions(sheet: SheetIn, sheetIndex: number, decided: DecidedHeadings): Region[] {
  const regions: Region[] = [];
  const seen = new HeadingsSeen();
  let below = 0;
  for (const row of anchorRows(sheet.grid, decided)) {
    if (row < below) continue;
    const header = bestHeader(sheet, row, decided);
    const found = splitHeader(header.cells, decided);
    // Headings that are said again, as on each page of a long list, begin no table of their own.
    if (found.length === 0 || seen.again(header.cells)) continue;
    below = header.top + header.height;
    regions.push(...found.map((each) => freeRegion(sheet, sheetIndex, header, each)));
  }
  return regions;
}

function freeRegion(sheet: SheetIn, sheetIndex: number, header: Header, found: Found): Region {
  const columns = found.cells.map((cell) => cell.column);
  const range = {
    top: header.top,
    left: columns[0] as number,
    bottom: sheet.grid.rowCount - 1,
    right: columns.at(-1) as number,
  };
  return { sheetIndex, sheet, range, firstRow: header.top + header.height, totalsRow: null, settled: null, ...found };
}
