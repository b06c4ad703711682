import { matchHeadings } from "../../../src/records/headings/headings";
import { findRegions } from "../../../src/records/headings/locate";
import type { Region } from "../../../src/records/headings/region";
import type { TableUse } from "../../../src/records/records";
import type { DecidedHeadings } from "../../../src/records/headings/table-match";
import { specOf } from "../../../src/records/tables";
import { type TableName, TABLE_NAMES } from "../../../src/records/tables/spec";
import { a1 } from "../../../src/workbook/cells";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import type { MappedColumn, TableFound } from "./found";

/** What each heading of the tables that were used stands for. */
export function mapTables(
  input: readonly TableUse[],
  regions: readonly Region[],
  decided: DecidedHeadings,
): TableFound[] {
  return input.map((use) => {
    const name = TABLE_NAMES.find((each) => each === use.table);
    const region = regions.find((each) => each.sheet.name === use.sheet && startsAt(each, use.address));
    return name && region ? mapped(use, name, region, decided) : { ...use, columns: [], further: [], wide: false };
  });
}

export function regionsOf(workbook: WorkbookIn, decided: DecidedHeadings): Region[] {
  return findRegions(workbook, decided);
}

function startsAt({ range }: Region, address: string): boolean {
  return address.split(":")[0] === a1(range.top, range.left);
}

function mapped(use: TableUse, name: TableName, region: Region, decided: DecidedHeadings): TableFound {
  const wide = name === "Observations" && region.spec?.name !== "Observations";
  const match = matchHeadings(specOf(name), region.cells, decided.get(name));
  const columns = specOf(name).columns.map(({ key, heading, required }): MappedColumn => {
    const cell = region.cells.find(({ column }) => column === match.columns.get(key));
    return {
      means: heading,
      required: required === true,
      heading: cell?.text ?? null,
      cell: cell ? a1(cell.row, cell.column) : null,
    };
  });
  return {
    ...use,
    columns: wide ? columns.filter(({ heading }) => heading !== null) : columns,
    further: match.unmatched.map(({ text }) => text),
    wide,
  };
}
