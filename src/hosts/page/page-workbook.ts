import { setDateSystem } from "../../../functions/date-system";
import { HostFailure, type JobOptions, type Receipt, type SavedAs, type WorkbookHost } from "../../workbook/host";
import { safeSheetNames } from "../../workbook/sheet-names";
import type { SheetOut } from "../../workbook/sheets";
import type { CellRange, SheetIn, WorkbookIn } from "../../workbook/workbook";
import { CELL, kindAt } from "../../workbook/cells";
import { readSheetCells } from "./cells/read-sheet";
import { saveToDisk } from "./download";
import { type NamedTable, withTableAddresses } from "./functions/table-references";
import type { PageGrid, SheetInGrid } from "./grid/page-grid";
import { sameCells } from "./same-cells";
import { openedWorkbook, sheetIdAt } from "./snapshot/opened-workbook";
import { reportSheet } from "./snapshot/report-sheet";
import { type Slices, slicesOf } from "./snapshot/slices";
import { TablesInGrid } from "./tables-in-grid";

interface AddedSheet {
  readonly id: string;
  readonly sheet: SheetOut;
}

interface Addition {
  readonly label: string;
  readonly sheets: readonly AddedSheet[];
}

export interface OpenedFile {
  readonly name: string;
  readonly workbook: WorkbookIn;
}

let opened = 0;

/** The workbook shown in the grid of the embedded page, as the pane sees it. Everything it keeps goes with the page. */
export class PageWorkbook implements WorkbookHost {
  readonly kind = "page";
  private additions: readonly Addition[] = [];
  private decisions: unknown = null;
  private readonly stopListening: () => void;

  private constructor(
    private readonly grid: PageGrid,
    private readonly fileName: string,
    private readonly dateSystem: WorkbookIn["dateSystem"],
    private readonly tables: TablesInGrid,
  ) {
    const stops = [
      grid.onLineChange((change) => tables.change(change)),
      grid.onFormula((formula) => withTableAddresses(formula, this.namedTables())),
    ];
    this.stopListening = () => stops.forEach((stop) => stop());
  }

  /** Lays a workbook out in the grid, in place of the one before. */
  static async open(grid: PageGrid, { name, workbook }: OpenedFile, options: JobOptions): Promise<PageWorkbook> {
    const sheets = await openedWorkbook(`workbook-${(opened += 1)}`, workbook, options);
    options.signal.throwIfAborted();
    setDateSystem(1900);
    grid.show(sheets);
    return new PageWorkbook(grid, name, workbook.dateSystem, new TablesInGrid(workbook, sheetIdAt));
  }

  close(): void {
    this.stopListening();
  }

  async name(): Promise<string> {
    return this.fileName;
  }

  /** The person's own sheets: a report added before is no record, whatever its headings. */
  async read(options: JobOptions): Promise<WorkbookIn> {
    const added = new Set(this.additions.flatMap((addition) => addition.sheets.map(({ id }) => id)));
    return this.readWhere(({ id }) => !added.has(id), options);
  }

  /** Every sheet, also those that were added: what a saved file holds. */
  readWhole(options: JobOptions): Promise<WorkbookIn> {
    return this.readWhere(() => true, options);
  }

  private async readWhere(isRead: (sheet: SheetInGrid) => boolean, options: JobOptions): Promise<WorkbookIn> {
    await this.grid.finishTyping();
    const slices = slicesOf(options);
    const sheets = this.grid.sheets().filter(isRead);
    const read: SheetIn[] = [];
    for (const [done, sheet] of sheets.entries()) {
      options.onProgress({ step: "Reading the sheets", done, of: sheets.length });
      const cells = await this.readSheet(sheet, slices);
      if (cells.grid.rowCount > 0) read.push(cells);
    }
    return { dateSystem: this.dateSystem, sheets: read };
  }

  async addSheets(sheets: readonly SheetOut[], read: WorkbookIn, label: string, options: JobOptions): Promise<Receipt> {
    const slices = slicesOf(options);
    const now = await this.read({ ...options, onProgress: () => undefined });
    if (!(await sameCells(read, now, slices))) {
      throw new HostFailure(
        "changed meanwhile",
        "The records changed after they were read, so nothing was added: ask for it once more.",
      );
    }
    const addition = { label, sheets: await this.addAll(sheets, slices, options) };
    this.additions = [...this.additions, addition];
    return this.receiptOf(addition);
  }

  async receipts(): Promise<readonly Receipt[]> {
    return this.additions.map((addition) => this.receiptOf(addition)).filter(({ sheets }) => sheets.length > 0);
  }

  async removeAdded(receipt: Receipt): Promise<void> {
    const names = new Map(this.grid.sheets().map(({ id, name }) => [name, id]));
    const gone = new Set(receipt.sheets.map((name) => names.get(name)));
    const ours = this.additions.flatMap(({ sheets }) => sheets.map(({ id }) => id)).filter((id) => gone.has(id));
    ours.forEach((id) => this.grid.remove(id));
    this.additions = this.additions.filter(({ sheets }) => sheets.some(({ id }) => this.grid.has(id)));
  }

  async showCell(sheet: string, cell: string): Promise<void> {
    const found = this.grid.sheets().find(({ name }) => name === sheet);
    if (!found) throw new HostFailure("changed meanwhile", "That sheet is no longer there. Read the workbook again.");
    this.grid.select(found.id, cell);
  }

  async loadDecisions(): Promise<unknown> {
    return this.decisions;
  }

  async saveDecisions(decisions: unknown): Promise<void> {
    this.decisions = decisions;
  }

  async saveFile(fileName: string, bytes: Uint8Array, mimeType: string): Promise<SavedAs> {
    saveToDisk(fileName, bytes, mimeType);
    return "downloaded";
  }

  async downloadFile(fileName: string, bytes: Uint8Array, mimeType: string): Promise<void> {
    saveToDisk(fileName, bytes, mimeType);
  }

  /** The sheets of reports that are still there, by the names they have now. */
  sheetsMade(): ReadonlyMap<string, SheetOut> {
    const names = new Map(this.grid.sheets().map(({ id, name }) => [id, name]));
    const made = this.additions.flatMap(({ sheets }) => sheets);
    return new Map(made.flatMap(({ id, sheet }) => (names.has(id) ? [[names.get(id) as string, sheet] as const] : [])));
  }

  private async readSheet({ id, name, merged }: SheetInGrid, slices: Slices): Promise<SheetIn> {
    const grid = await readSheetCells(this.grid.cells(id), this.dateSystem, slices);
    const isFilled = (row: number, column: number) => kindAt(grid, row, column) !== CELL.empty;
    return { name, grid, tables: this.tables.of(id, isFilled), merged };
  }

  private namedTables(): NamedTable[] {
    return this.grid.sheets().flatMap(({ id, name: sheet }) => {
      const { own } = this.grid.cells(id);
      const at = (row: number, column: number) => own[row]?.[column]?.v ?? null;
      const tables = this.tables.of(id, (row, column) => at(row, column) !== null);
      return tables.map((table) => ({ ...table, sheet, headings: headingsOf(table.range, at) }));
    });
  }

  /** All of them or none: what was added before a cancel goes again. */
  private async addAll(sheets: readonly SheetOut[], slices: Slices, options: JobOptions): Promise<AddedSheet[]> {
    const standing = this.grid.sheets().map(({ name }) => name);
    const names = safeSheetNames([...standing, ...sheets.map(({ name }) => name)]).slice(standing.length);
    const added: AddedSheet[] = [];
    try {
      for (const [done, sheet] of sheets.entries()) {
        options.onProgress({ step: "Adding sheets", done, of: sheets.length });
        const laidOut = await reportSheet(sheet, slices);
        added.push({ id: this.grid.add(names[done] as string, laidOut), sheet });
        await slices.rest();
      }
      return added;
    } catch (error) {
      added.forEach(({ id }) => this.grid.remove(id));
      throw error;
    }
  }

  private receiptOf({ label, sheets }: Addition): Receipt {
    const names = new Map(this.grid.sheets().map(({ id, name }) => [id, name]));
    return { label, sheets: sheets.flatMap(({ id }) => names.get(id) ?? []) };
  }
}

function headingsOf({ top, left, right }: CellRange, at: (row: number, column: number) => unknown): string[] {
  return Array.from({ length: right - left + 1 }, (_, column) => String(at(top, left + column) ?? ""));
}
