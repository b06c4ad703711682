import { a1, a1Range } from "../../workbook/cells";
import type { CellOut, ColumnOut, SheetOut } from "../../workbook/sheets";
import type { SampleTable } from "../tables";

/** One fault planted on purpose. */
export interface PlantedFault {
  readonly sheet: string;
  /** One address, or the range of a column. */
  readonly cell: string;
  /** The rule that names it; null where it is read as it was meant, and nothing is said. */
  readonly rule: string | null;
  readonly kind: string;
  readonly whatHappens: string;
}

/** A fault of one cell of a row, by column from 0. */
export interface CellFault {
  readonly column: number;
  readonly rule: string | null;
  readonly kind: string;
  readonly whatHappens: string;
}

export interface DraftRow {
  readonly cells: readonly CellOut[];
  readonly faults?: readonly CellFault[];
}

/** A sheet in the making: what stands above its table, the headings (one row or two), and the rows. */
export interface Draft {
  readonly name: string;
  readonly columns: readonly ColumnOut[];
  readonly above: readonly DraftRow[];
  readonly headings: readonly DraftRow[];
  readonly rows: readonly DraftRow[];
  /** Merged in the heading rows: rows count from the first of them. */
  readonly merged?: readonly { readonly row: number; readonly left: number; readonly right: number }[];
  /** Faults of a whole column of the rows. */
  readonly columnFaults?: readonly CellFault[];
  readonly excelTable: boolean;
}

export function fault(column: number, rule: string | null, kind: string, whatHappens: string): CellFault {
  return { column, rule, kind, whatHappens };
}

export function sheetOfDraft(draft: Draft): SheetOut {
  const lines = linesOf(draft);
  const top = draft.above.length;
  const right = draft.columns.length - 1;
  const table = { name: draft.name, range: { top, left: 0, bottom: lines.length - 1, right } };
  const merged = (draft.merged ?? []).map(({ row, left, right: to }) => ({
    top: top + row,
    bottom: top + row,
    left,
    right: to,
  }));
  return {
    name: draft.name,
    columns: draft.columns,
    rows: lines.map((line) => [...line.cells]),
    ...(draft.excelTable ? { tables: [table] } : {}),
    ...(merged.length > 0 ? { merged } : {}),
  };
}

export function faultsOfDraft(draft: Draft): PlantedFault[] {
  const lines = linesOf(draft);
  const first = draft.above.length + draft.headings.length;
  const named = ({ column: _, ...rest }: CellFault, cell: string): PlantedFault => ({
    sheet: draft.name,
    cell,
    ...rest,
  });
  return [
    ...lines.flatMap((line, row) => (line.faults ?? []).map((each) => named(each, a1(row, each.column)))),
    ...(draft.columnFaults ?? []).map((each) =>
      named(each, a1Range(first, each.column, lines.length - 1, each.column)),
    ),
  ];
}

/** Puts the faulty rows among the sound ones at even distances, the sheet's order kept. */
export function spread(sound: readonly DraftRow[], faulty: readonly DraftRow[]): DraftRow[] {
  const step = (sound.length + 1) / (faulty.length + 1);
  const rows: DraftRow[] = [];
  let next = 0;
  sound.forEach((row, index) => {
    while (next < faulty.length && (next + 1) * step <= index) rows.push(faulty[next++] as DraftRow);
    rows.push(row);
  });
  return [...rows, ...faulty.slice(next)];
}

export function soundRows(table: SampleTable): DraftRow[] {
  return table.rows.map((cells) => ({ cells }));
}

/** Day columns by their place, for headings that are not the usual ones. */
export function columnsOf(count: number, dayColumns: readonly number[], width = 14): ColumnOut[] {
  return Array.from({ length: count }, (_, index) =>
    dayColumns.includes(index) ? { width, format: "date" } : { width },
  );
}

function linesOf(draft: Draft): DraftRow[] {
  return [...draft.above, ...draft.headings, ...draft.rows];
}
