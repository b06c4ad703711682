import { a1Range } from "../../../workbook/cells";
import type { CellRange } from "../../../workbook/workbook";

/** A table of the workbook, as formulas may name it. */
export interface NamedTable {
  readonly name: string;
  readonly sheet: string;
  readonly range: CellRange;
  readonly headerRow: boolean;
  readonly totalsRow: boolean;
  readonly headings: readonly string[];
}

/** A text in quotes, a sheet's name in quotes, or a name with what stands in brackets behind it. */
const PIECES =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'!|([\p{L}_][\p{L}\p{N}_.]*)((?:\[(?:[^[\]]|\[[^[\]]*\])*\])?)(?![\p{L}\p{N}_.!(])/gu;

/**
 * The formula with the addresses of tables in place of their names: `Children[#All]` becomes `Children!$A$1:$I$252`. The
 * grid's own engine does not follow such names reliably. A name that it does not know stays as it is.
 * Source of the notation: Microsoft Support, "Using structured references with Excel tables".
 */
export function withTableAddresses(formula: string, tables: readonly NamedTable[]): string {
  return formula.replace(PIECES, (piece: string, name: string | undefined, brackets: string) => {
    const table = name && tables.find((each) => each.name.toLowerCase() === name.toLowerCase());
    if (!table) return piece;
    const range = partOf(table, brackets.slice(1, -1).trim());
    return range ? `${quoted(table.sheet)}!${absolute(range)}` : piece;
  });
}

type Part = "#all" | "#data" | "#headers" | "#totals";

function partOf(table: NamedTable, inside: string): CellRange | null {
  const words = inside.includes("[")
    ? [...inside.matchAll(/\[([^\]]*)\]/g)].map(([, word]) => word as string)
    : [inside];
  const parts = words.map((word) => word.trim()).filter((word) => word !== "");
  const columns = parts.filter((word) => !word.startsWith("#"));
  const part = (parts.find((word) => word.startsWith("#")) ?? "#Data").toLowerCase();
  const rows = rowsOf(table, part);
  if (!rows || columns.length > 1) return null;
  const [column] = columns;
  if (column === undefined) return { ...table.range, ...rows };
  const at = table.headings.findIndex((heading) => heading.toLowerCase() === column.toLowerCase());
  return at < 0 ? null : { ...rows, left: table.range.left + at, right: table.range.left + at };
}

function rowsOf({ range, headerRow, totalsRow }: NamedTable, part: string): { top: number; bottom: number } | null {
  const { top, bottom } = range;
  const rows: Partial<Record<Part, { top: number; bottom: number }>> = {
    "#all": { top, bottom },
    "#data": { top: headerRow ? top + 1 : top, bottom: totalsRow ? bottom - 1 : bottom },
    ...(headerRow && { "#headers": { top, bottom: top } }),
    ...(totalsRow && { "#totals": { top: bottom, bottom } }),
  };
  return rows[part as Part] ?? null;
}

function absolute({ top, left, bottom, right }: CellRange): string {
  return a1Range(top, left, bottom, right).replace(/[A-Z]+|\d+/g, (each) => `$${each}`);
}

function quoted(sheet: string): string {
  return /^[\p{L}_][\p{L}\p{N}_]*$/u.test(sheet) && !/^[A-Z]{1,3}\d+$/i.test(sheet)
    ? sheet
    : `'${sheet.replace(/'/g, "''")}'`;
}
