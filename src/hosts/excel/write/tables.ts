/// <reference types="office-js" />
import type { CellOut, SheetOut, TableOut } from "../../../workbook/sheets";
import { rangeOf } from "./ranges";
import type { Step } from "./steps";

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

/** Tables over cells that are already written. */
export function tableSteps(sheet: SheetOut, names: TableNames): Step[] {
  return (sheet.tables ?? []).map((table) => {
    checkHeadings(table, sheet);
    const name = names.fresh(table.name);
    // A table needs one row below its headings.
    const area = { ...table.range, bottom: Math.max(table.range.bottom, table.range.top + 1) };
    return (target) => {
      const added = target.tables.add(rangeOf(target, area), true);
      added.name = name;
      added.style = STYLE;
    };
  });
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
