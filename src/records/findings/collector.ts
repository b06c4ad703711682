import { a1, a1Range } from "../../workbook/cells";
import { fileOf } from "../../workbook/sources";
import type { CellRange } from "../../workbook/workbook";
import type { Finding, Severity } from "./finding";
import { ruleOf, ruleOrder } from "./rules";
import { TABLE_NAMES } from "../tables/spec";

/** A table as it stands on a sheet, as far as a finding has to name it. */
export interface Place {
  readonly table: string;
  readonly sheet: number;
  readonly sheetName: string;
  readonly file?: string;
}

/** Words that say more than the rule's own. Never the text of a cell. */
export interface Detail {
  readonly expected?: string;
  readonly advice?: string;
  /** Where it is milder than the rule's own, since no row is left out. */
  readonly severity?: Severity;
}

interface Noted {
  readonly finding: Finding;
  readonly order: readonly [table: number, sheet: number, row: number, column: number, rule: number];
}

const NOWHERE: Place = { table: "Workbook", sheet: -1, sheetName: "" };

/** Gathers findings in any order and gives them in one fixed order: table, sheet, row, column, rule. */
export class FindingCollector {
  private readonly noted: Noted[] = [];
  private readonly copies = new Map<Place & { readonly range: CellRange }, number>();

  cell(rule: string, place: Place, row: number, column: number, detail: Detail = {}): void {
    this.note(rule, place, row, column, a1(row, column), detail);
  }

  range(rule: string, place: Place, range: CellRange, detail: Detail = {}): void {
    const address = a1Range(range.top, range.left, range.bottom, range.right);
    this.note(rule, place, range.top, range.left, address, detail);
  }

  /** A finding about the workbook, or about a table that is not there. */
  workbook(rule: string, table: string, detail: Detail = {}): void {
    this.note(rule, { ...NOWHERE, table }, -1, -1, "", detail);
  }

  /** A finding about one of several files as a whole. */
  file(rule: string, file: string): void {
    this.note(rule, { ...NOWHERE, file }, -1, -1, "", {});
  }

  /** A row that another file has too: listed once for each table, with how many there are. */
  copyElsewhere(table: Place & { readonly range: CellRange }): void {
    this.copies.set(table, (this.copies.get(table) ?? 0) + 1);
  }

  sorted(): Finding[] {
    this.copies.forEach((count, table) => {
      const rows = count === 1 ? "1 row of this table is" : `${count} rows of this table are`;
      const advice = `Nothing to do: ${rows} in another file too, and counted once.`;
      this.range("copy-in-other-file", table, table.range, { advice });
    });
    this.copies.clear();
    return this.noted.sort((a, b) => compare(a.order, b.order)).map((each) => each.finding);
  }

  private note(id: string, place: Place, row: number, column: number, cell: string, detail: Detail): void {
    const rule = ruleOf(id);
    this.noted.push({
      finding: {
        rule: id,
        severity: detail.severity ?? rule.severity,
        table: place.table,
        ...fileOf(place),
        sheet: place.sheetName,
        cell,
        expected: detail.expected ?? rule.expected,
        advice: detail.advice ?? rule.advice,
      },
      order: [tableOrder(place.table), place.sheet, row, column, ruleOrder(id)],
    });
  }
}

function tableOrder(table: string): number {
  return (TABLE_NAMES as readonly string[]).indexOf(table);
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i += 1) {
    const difference = (a[i] as number) - (b[i] as number);
    if (difference !== 0) return difference;
  }
  return 0;
}
