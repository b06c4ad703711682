import { isoOf } from "../../../src/age/day";
import { makeSample, type Sample, type SampleTable } from "../../../src/sample/make-sample";
import { sampleSheets } from "../../../src/sample/sample-sheets";
import { oneWorkbook, type SourceIn } from "../../../src/workbook/sources";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { asRead } from "../../sample/as-read";

/** The invented program, small, and the same cut into files in the ways in which programs keep them. */
export const SAMPLE: Sample = makeSample({ children: 90, seed: 11 });

export const WHOLE: WorkbookIn = bookOf(SAMPLE.tables);

export function bookOf(tables: readonly SampleTable[]): WorkbookIn {
  return asRead(sampleSheets({ ...SAMPLE, tables }));
}

export function together(parts: Readonly<Record<string, readonly SampleTable[]>>): WorkbookIn {
  return oneWorkbook(Object.entries(parts).map(([file, tables]): SourceIn => ({ file, workbook: bookOf(tables) })));
}

type Keep = (table: SampleTable, row: SampleTable["rows"][number]) => boolean;

export function rowsKept(keep: Keep, tables = SAMPLE.tables): SampleTable[] {
  return tables.map((table) => ({ ...table, rows: table.rows.filter((row) => keep(table, row)) }));
}

export function columnOf({ headings }: SampleTable, heading: string): number {
  return headings.indexOf(heading);
}

/** One file a site; a child that moved has its rows of every table in the file of its last site, and its stay in each. */
export function bySite(): Record<string, SampleTable[]> {
  const children = SAMPLE.tables[0] as SampleTable;
  const site = columnOf(children, "Site");
  const siteOf = new Map(children.rows.map((row) => [row[0], row[site]]));
  const sites = [...new Set(children.rows.map((row) => String(row[site])))].sort();
  return Object.fromEntries(
    sites.map((name) => [
      `${name}.xlsx`,
      rowsKept((table, row) => {
        if (table.name === "Skills") return true;
        return (table.name === "Children" ? row[site] : siteOf.get(row[0])) === name;
      }),
    ]),
  );
}

export function byTable(): Record<string, SampleTable[]> {
  return Object.fromEntries(SAMPLE.tables.map((table) => [`${table.name}.xlsx`, [table]]));
}

/** One file a year of checks; the other tables are in each file, as a program copies last year's workbook. */
export function byYear(): Record<string, SampleTable[]> {
  const year = (row: SampleTable["rows"][number]) => isoOf(row[2] as number).slice(0, 4);
  const years = [...new Set((SAMPLE.tables[1] as SampleTable).rows.map(year))].sort();
  return Object.fromEntries(
    years.map((each) => [
      `Alder Fork ${each}.xlsx`,
      rowsKept((table, row) => table.name !== "Observations" || year(row) === each),
    ]),
  );
}
