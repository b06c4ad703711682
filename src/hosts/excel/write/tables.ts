/// <reference types="office-js" />
import type { JobOptions } from "../../../workbook/host";
import type { CellOut, SheetOut, TableOut } from "../../../workbook/sheets";
import { rangeOf } from "./ranges";
import { inExcel, type Patience } from "../run";

const STYLE = "TableStyleLight1";

/** Names of tables and of cells share one space in a workbook, without regard to case. */
export class TableNames {
  private readonly taken: Set<string>;

  constructor(standing: readonly string[]) {
    this.taken = new Set(standing.map((name) => name.toLowerCase()));
  }

  fresh(name: string): string {
    for (let copy = 1; ; copy += 1) {
      const tried = copy === 1 ? name : `${name}_${copy}`;
      if (this.taken.has(tried.toLowerCase())) continue;
      this.taken.add(tried.toLowerCase());
      return tried;
    }
  }
}

/** Tables over cells that are already written, all in one request. */
export async function addTables(
  sheetId: string,
  sheet: SheetOut,
  names: TableNames,
  patience: Patience,
  options?: JobOptions,
): Promise<void> {
  const tables = (sheet.tables ?? []).map((table) => {
    checkHeadings(table, sheet);
    // A table needs one row below its headings.
    const area = { ...table.range, bottom: Math.max(table.range.bottom, table.range.top + 1) };
    return { name: names.fresh(table.name), area };
  });
  if (tables.length === 0) return;
  const put = async (context: Excel.RequestContext, attempt: number) => {
    const target = context.workbook.worksheets.getItem(sheetId);
    const before = attempt > 0 ? await standingTables(context, target) : [];
    for (const [at, { name, area }] of tables.entries()) {
      const table = before[at] ?? target.tables.add(rangeOf(target, area), true);
      if (before[at]?.name !== name) table.name = name;
      table.style = STYLE;
    }
    await context.sync();
  };
  await inExcel(put, patience, options);
}

/** What an earlier try of the request added: the sheet is new, so every table on it is one of these. */
async function standingTables(context: Excel.RequestContext, { tables }: Excel.Worksheet): Promise<Excel.Table[]> {
  tables.load("items/name");
  await context.sync();
  return tables.items;
}

/** Excel would change such headings without a word. */
function checkHeadings({ name, range }: TableOut, sheet: SheetOut): void {
  const texts = (sheet.rows[range.top] ?? []).slice(range.left, range.right + 1).map(textOf);
  const distinct = new Set(texts.map((text) => text.toLowerCase()));
  if (texts.length !== range.right - range.left + 1 || distinct.has("") || distinct.size < texts.length) {
    throw new RangeError(`addSheets: the headings of table ${name} must be texts that differ`);
  }
}

function textOf(cell: CellOut): string {
  const value = typeof cell === "object" && cell !== null ? cell.value : cell;
  return typeof value === "string" ? value : "";
}
