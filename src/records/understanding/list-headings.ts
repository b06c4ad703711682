import { a1 } from "../../workbook/cells";
import type { FindingCollector } from "../findings/collector";
import type { Block } from "../headings/block";
import { specOf } from "../tables";
import { contentOf } from "./content";
import { kindOfTable } from "./kinds";
import { missingColumns } from "./missing-columns";
import type { HeadingSeen, SheetTaken } from "./understanding";

/** Lists every heading of a used table that is not read, and every column that matters and was not found. */
export function listHeadings(findings: FindingCollector, blocks: readonly Block[]): void {
  for (const block of blocks) {
    for (const { row, column } of block.unread) findings.cell("heading-not-read", block, row, column);
  }
  for (const table of ["Children", "Ratings"] as const) {
    const own = blocks.filter((block) => block.table === table && block.rows.length > 0);
    const first = own[0];
    if (!first) continue;
    const { top, left, right } = first.range;
    for (const { column, sentence } of missingColumns(own.map(sheetOf))) {
      const range = { top, bottom: first.firstRow - 1, left, right };
      findings.range("column-not-found", first, range, {
        expected: `a column ${column}`,
        advice: `${sentence} Choose its heading, or leave it if nothing is recorded.`,
      });
    }
  }
}

/** A block as an understanding shows it: the columns it has, and the headings that are left. */
function sheetOf(block: Block): SheetTaken {
  const spec = specOf(block.table);
  const has = spec.columns.filter(
    ({ key }) =>
      block.columns.has(key) || block.constants.has(key) || block.above?.key === key || block.contested.has(key),
  );
  const seen = (heading: string, row: number, column: number): HeadingSeen => {
    const { kind, filled } = contentOf(block.grid, column, block.rows);
    const cell = a1(row, column);
    return { heading, cell, means: null, skill: null, content: kind, cells: filled, doubtful: false, above: "" };
  };
  const left = [
    ...block.unread.map(({ heading, row, column }) => seen(heading, row, column)),
    ...block.further
      .filter(({ column }) => column >= 0)
      .map(({ heading, column }) => seen(heading, block.firstRow - 1, column)),
  ];
  const read = has.map(({ heading }): HeadingSeen => ({ ...seen(heading, 0, -1), means: heading }));
  return {
    key: "",
    sheet: block.sheetName,
    is: kindOfTable(block.table),
    why: "",
    doubtful: false,
    headerRows: [],
    rows: block.rows.length,
    headings: [...read, ...left],
  };
}
