import type { JobOptions, Progress } from "../../../src/workbook/host";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { ExcelWorkbook } from "../../../src/hosts/excel/excel-workbook";
import type { Patience } from "../../../src/hosts/excel/run";

export { bookOf } from "../../office/book-of";

/** Waits little for a person, and for Excel. */
export const hasty = (patience: Partial<Patience> = {}) =>
  new ExcelWorkbook({ retryMs: 1, mostRetries: 5, tellMs: 5_000, graceMs: 20, answerMs: 20_000, ...patience });

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
