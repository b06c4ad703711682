import type { Finding } from "../../../src/records/findings/finding";
import { columnMeant } from "../../../src/records/headings/headings";
import type { Region } from "../../../src/records/headings/region";
import { specOf } from "../../../src/records/tables";
import { type TableName, TABLE_NAMES } from "../../../src/records/tables/spec";
import { keyOf } from "../../../src/records/cells/words";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { rangeAt, textAt } from "./cell-text";
import type { GroupedFindings } from "./finding-groups";
import type { Repair, Writing } from "./found";

/** Different writings that cross to the pane; the rest shows once these are settled. */
const MOST_WRITINGS = 50;

/** What a decision could settle about these findings; null where none can. */
export function repairOf(group: GroupedFindings, workbook: WorkbookIn, regions: readonly Region[]): Repair | null {
  const { rule, table } = group.first;
  const name = TABLE_NAMES.find((each) => each === table);
  if (!name) return null;
  if (rule === "skill-unknown") return { kind: "skill-alias", writings: writingsOf(group.findings, workbook) };
  if (rule === "child-unknown") return { kind: "same-child", writings: writingsOf(group.findings, workbook) };
  if (DATE_RULES.has(rule)) return { kind: "date-order", table, columns: columnsOf(group.findings, name, regions) };
  if (rule === "heading-unknown" || rule === "heading-twice") {
    return { kind: "heading", table, headings: headingsOf(group.findings, workbook), means: meansOf(name) };
  }
  return null;
}

export function meansOf(name: TableName): string[] {
  return specOf(name).columns.map(({ heading }) => heading);
}

const DATE_RULES: ReadonlySet<string> = new Set([
  "date-order-unknown",
  "date-order-contradicts",
  "date-column-swapped",
]);

function writingsOf(findings: readonly Finding[], workbook: WorkbookIn): Writing[] {
  const counted = new Map<string, { text: string; cells: number }>();
  for (const { sheet, cell } of findings) {
    const range = rangeAt(cell);
    const text = range ? textAt(workbook, sheet, range.top, range.left) : "";
    if (text === "") continue;
    const seen = counted.get(keyOf(text));
    if (seen) seen.cells += 1;
    else counted.set(keyOf(text), { text, cells: 1 });
  }
  return [...counted.values()].sort((a, b) => b.cells - a.cells).slice(0, MOST_WRITINGS);
}

/** The headings of the columns that the findings stand in, as decisions name them. */
function columnsOf(findings: readonly Finding[], table: TableName, regions: readonly Region[]): string[] {
  const headings = findings.flatMap(({ sheet, cell }) => {
    const range = rangeAt(cell);
    const region = regions.find((each) => each.sheet.name === sheet && range && holds(each, range.top, range.left));
    const heading = region?.cells.find(({ column }) => column === range?.left)?.text;
    return heading === undefined ? [] : [columnMeant(specOf(table), heading)?.heading ?? heading];
  });
  return [...new Set(headings)];
}

function holds({ range }: Region, row: number, column: number): boolean {
  return row >= range.top && row <= range.bottom && column >= range.left && column <= range.right;
}

function headingsOf(findings: readonly Finding[], workbook: WorkbookIn): string[] {
  const texts = findings.flatMap(({ sheet, cell }) => {
    const range = rangeAt(cell);
    if (!range) return [];
    const columns = Array.from({ length: range.right - range.left + 1 }, (_, at) => range.left + at);
    return columns.map((column) => textAt(workbook, sheet, range.top, column)).filter((text) => text !== "");
  });
  return [...new Set(texts)];
}
