/// <reference types="office-js" />
import type { DateSystem } from "../../../age/serial";
import type { JobOptions } from "../../../workbook/host";
import type { CellRange, TableIn } from "../../../workbook/workbook";
import { dateSystemOf, firstDayOf1904 } from "../date-system";
import { markedSheets } from "../mark";
import { isExcelApi } from "../ready";
import { type Patience, readInExcel } from "../run";

/** What stands where, before a cell is read. */
export interface Outline {
  readonly dateSystem: DateSystem;
  readonly sheets: readonly SheetOutline[];
}

export interface SheetOutline {
  readonly id: string;
  readonly name: string;
  /** The smallest area that holds every value. */
  readonly used: CellRange;
  readonly tables: readonly TableIn[];
  readonly merged: readonly CellRange[];
}

/** The user's own sheets that hold something, hidden ones too. Sheets that this add-in added are no records. */
export function readOutline(patience: Patience, options: JobOptions): Promise<Outline> {
  return readInExcel(
    async (context) => {
      const firstDay = firstDayOf1904(context);
      const own = (await markedSheets(context)).filter(({ mark, unsure }) => !mark && !unsure);
      const asked = own.map(({ id, name }) => askAbout(context, id, name));
      await context.sync();
      const filled = asked.filter(({ used }) => !used.isNullObject);
      const tables = filled.map(({ tables: { items } }) => items.map((table) => placed(table.getRange())));
      await context.sync();
      const merged = await mergedAreas(context, filled);
      const sheets = filled.map((sheet, index) => outlineOf(sheet, tables[index] ?? [], merged[index] ?? []));
      return { dateSystem: dateSystemOf(firstDay), sheets };
    },
    patience,
    options,
  );
}

interface Asked {
  readonly id: string;
  readonly name: string;
  readonly used: Excel.Range;
  readonly tables: Excel.TableCollection;
}

function askAbout(context: Excel.RequestContext, id: string, name: string): Asked {
  const sheet = context.workbook.worksheets.getItem(id);
  const { tables } = sheet;
  tables.load("items/name,items/showHeaders,items/showTotals");
  return { id, name, used: placed(sheet.getUsedRangeOrNullObject(true)), tables };
}

function placed(range: Excel.Range): Excel.Range {
  return range.load("rowIndex,columnIndex,rowCount,columnCount");
}

/** Merged areas are only known from ExcelApi 1.13 on; before, a sheet is read as if it had none. */
async function mergedAreas(context: Excel.RequestContext, sheets: readonly Asked[]): Promise<CellRange[][]> {
  if (!isExcelApi("1.13")) return [];
  const found = sheets.map(({ used }) => used.getMergedAreasOrNullObject());
  await context.sync();
  const areas = found.map((each) => (each.isNullObject ? null : each.areas));
  areas.forEach((each) => each?.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount"));
  await context.sync();
  return areas.map((each) => (each ? each.items.map(areaOf) : []));
}

function outlineOf(
  { id, name, used, tables }: Asked,
  ranges: readonly Excel.Range[],
  merged: CellRange[],
): SheetOutline {
  return {
    id,
    name,
    used: areaOf(used),
    merged,
    tables: tables.items.map((table, index) => ({
      name: table.name,
      range: areaOf(ranges[index] as Excel.Range),
      headerRow: table.showHeaders,
      totalsRow: table.showTotals,
    })),
  };
}

function areaOf({ rowIndex, columnIndex, rowCount, columnCount }: Excel.Range): CellRange {
  return { top: rowIndex, left: columnIndex, bottom: rowIndex + rowCount - 1, right: columnIndex + columnCount - 1 };
}
