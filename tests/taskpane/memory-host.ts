import { HostFailure, type JobOptions, type Receipt, type SavedAs, type WorkbookHost } from "../../src/workbook/host";
import type { Grid } from "../../src/workbook/cells";
import { safeSheetNames } from "../../src/workbook/sheet-names";
import type { SheetOut } from "../../src/workbook/sheets";
import type { WorkbookIn } from "../../src/workbook/workbook";

/** A workbook in memory behind the pane's port: what a test sees of it stands in its public fields. */
export class MemoryHost implements WorkbookHost {
  readonly kind = "page" as const;
  readonly added: { readonly name: string; readonly sheet: SheetOut }[] = [];
  readonly shown: string[] = [];
  readonly saved: { readonly fileName: string; readonly bytes: Uint8Array; readonly mimeType: string }[] = [];
  readonly downloaded: typeof this.saved = [];
  decisions: unknown = null;
  /** Where files go. */
  savesAs: SavedAs = "downloaded";
  /** Milliseconds that each step of a read or a write takes. */
  pace = 0;
  private list: Receipt[] = [];

  constructor(public workbook: WorkbookIn) {}

  name(): Promise<string> {
    return Promise.resolve("Program.xlsx");
  }

  async read({ signal, onProgress }: JobOptions): Promise<WorkbookIn> {
    const sheets = [];
    for (const [done, sheet] of this.workbook.sheets.entries()) {
      onProgress({ step: "Reading the workbook", done, of: this.workbook.sheets.length });
      await this.rest(signal);
      sheets.push({ ...sheet, grid: copied(sheet.grid) });
    }
    return { ...this.workbook, sheets };
  }

  async addSheets(
    sheets: readonly SheetOut[],
    read: WorkbookIn,
    label: string,
    { signal, onProgress }: JobOptions,
  ): Promise<Receipt> {
    if (!(await this.isAsRead(read))) {
      throw new HostFailure(
        "changed meanwhile",
        "A cell was changed while the report was made. Nothing was added; make the report again.",
      );
    }
    const taken = [...this.workbook.sheets.map(({ name }) => name), ...this.added.map(({ name }) => name)];
    const names = safeSheetNames([...taken, ...sheets.map(({ name }) => name)]).slice(taken.length);
    for (const done of sheets.keys()) {
      onProgress({ step: "Adding the sheets", done, of: sheets.length });
      await this.rest(signal);
    }
    sheets.forEach((sheet, index) => this.added.push({ name: names[index] as string, sheet }));
    const receipt = { sheets: names, label };
    this.list = [...this.list, receipt];
    return receipt;
  }

  receipts(): Promise<readonly Receipt[]> {
    return Promise.resolve(this.list);
  }

  removeAdded(receipt: Receipt): Promise<void> {
    const gone = new Set(receipt.sheets);
    this.added.splice(0, this.added.length, ...this.added.filter(({ name }) => !gone.has(name)));
    this.list = this.list.filter((each) => each !== receipt);
    return Promise.resolve();
  }

  showCell(sheet: string, cell: string): Promise<void> {
    this.shown.push(`${sheet}!${cell}`);
    return Promise.resolve();
  }

  loadDecisions(): Promise<unknown> {
    return Promise.resolve(structuredClone(this.decisions));
  }

  saveDecisions(decisions: unknown): Promise<void> {
    this.decisions = structuredClone(decisions);
    return Promise.resolve();
  }

  saveFile(fileName: string, bytes: Uint8Array, mimeType: string): Promise<SavedAs> {
    this.saved.push({ fileName, bytes, mimeType });
    return Promise.resolve(this.savesAs);
  }

  downloadFile(fileName: string, bytes: Uint8Array, mimeType: string): Promise<void> {
    this.downloaded.push({ fileName, bytes, mimeType });
    return Promise.resolve();
  }

  private async rest(signal: AbortSignal): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, this.pace));
    signal.throwIfAborted();
  }

  /** In slices, as every host must: no comparison holds the thread. */
  private async isAsRead(read: WorkbookIn): Promise<boolean> {
    for (const [index, { grid }] of this.workbook.sheets.entries()) {
      const other = read.sheets[index]?.grid;
      for (let row = 0; row < grid.rowCount; row += ROWS_A_SLICE) {
        await new Promise((resolve) => setTimeout(resolve, 0));
        if (!other || !sameRows(grid, other, row)) return false;
      }
    }
    return true;
  }
}

const ROWS_A_SLICE = 20_000;

function copied(grid: Grid): Grid {
  const columns = grid.columns.map((each) => each && { kinds: each.kinds.slice(), values: each.values.slice() });
  return { ...grid, columns };
}

function sameRows(a: Grid, b: Grid, from: number): boolean {
  return a.columns.every((column, at) => {
    const other = b.columns[at];
    if (!column || !other) return column === other;
    for (let row = from; row < Math.min(column.kinds.length, from + ROWS_A_SLICE); row += 1) {
      if (column.kinds[row] !== other.kinds[row] || column.values[row] !== other.values[row]) return false;
    }
    return true;
  });
}
