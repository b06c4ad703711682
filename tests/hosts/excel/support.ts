import { serialOf } from "../../../src/age/serial";
import type { JobOptions, Progress } from "../../../src/workbook/host";
import type { CellOut, SheetOut } from "../../../src/workbook/sheets";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { ExcelWorkbook } from "../../../src/hosts/excel/excel-workbook";
import { MemoryWorkbook, type MemoryWorkbookOptions } from "../../office/workbook/memory-workbook";
import type { MemorySheet } from "../../office/workbook/memory-sheet";

/** Waits little for the user who edits a cell. */
export const hasty = () => new ExcelWorkbook({ retryMs: 1, mostRetries: 5 });

export function job(): JobOptions & { readonly steps: Progress[]; readonly cancel: () => void } {
  const controller = new AbortController();
  const steps: Progress[] = [];
  return {
    signal: controller.signal,
    onProgress: (progress) => steps.push(progress),
    steps,
    cancel: () => controller.abort(new Error("cancelled by the user")),
  };
}

/** A workbook in memory that holds these sheets, days as serials of its date system. */
export function bookOf(sheets: readonly SheetOut[], options: MemoryWorkbookOptions = {}): MemoryWorkbook {
  const book = new MemoryWorkbook(options);
  for (const sheet of sheets) fill(book, book.addSheet(sheet.name), sheet);
  return book;
}

function fill(book: MemoryWorkbook, target: MemorySheet, sheet: SheetOut): void {
  sheet.rows.forEach((cells, row) => cells.forEach((cell, column) => put(book, target, row, column, cell, sheet)));
  for (const { name, range } of sheet.tables ?? []) {
    book.addTable(target, { name, area: range, style: "TableStyleLight1", showHeaders: true, showTotals: false });
  }
}

function put(book: MemoryWorkbook, to: MemorySheet, row: number, column: number, cell: CellOut, sheet: SheetOut): void {
  const whole = typeof cell === "object" && cell !== null ? cell : { value: cell, ...sheet.columns[column] };
  if (whole.value === null || whole.value === "") return;
  const isDay = whole.format === "date" && typeof whole.value === "number";
  to.put(row, column, isDay ? serialOf(whole.value as number, book.dateSystem) : whole.value);
  if (isDay) to.setFormat(row, column, "yyyy-mm-dd");
}

/** Grids as plain rows of [kind, value], which do not depend on how a host numbers its texts. */
export function plain({ dateSystem, sheets }: WorkbookIn): unknown {
  return {
    dateSystem,
    sheets: sheets.map(({ name, grid, tables, merged }) => ({
      name,
      tables,
      merged,
      columns: grid.columns.map((column) =>
        Array.from(column?.kinds ?? [], (kind, row) => {
          const value = column?.values[row];
          return kind === 0 ? null : [kind, kind === 3 || kind === 5 ? grid.strings[value ?? -1] : value];
        }),
      ),
    })),
  };
}

export const NO_SHEETS: WorkbookIn = { dateSystem: 1900, sheets: [] };

/** The code of what a promise is rejected with: a failure's kind, or the message of another error. */
export async function failureOf(promise: Promise<unknown>): Promise<{ kind: string; message: string }> {
  try {
    await promise;
  } catch (error) {
    const { kind = "another error", message } = error as { kind?: string; message: string };
    return { kind, message };
  }
  return { kind: "no failure", message: "" };
}
