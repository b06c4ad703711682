import { setDateSystem } from "../../../functions/date-system";
import { HostFailure, type JobOptions, type Receipt, type SavedAs, type WorkbookHost } from "../../workbook/host";
import { safeSheetNames } from "../../workbook/sheet-names";
import { fileOf } from "../../workbook/sources";
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

interface Addition {
  readonly label: string;
  /** Ids of sheets. */
  readonly sheets: readonly string[];
}

export interface OpenedFile {
  readonly name: string;
  readonly workbook: WorkbookIn;
}

/** The file of a sheet where there are several, and its date system where that is not the workbook's. */
interface Origin {
  readonly file: string | undefined;
  readonly dateSystem: WorkbookIn["dateSystem"] | undefined;
}

let opened = 0;

/** The workbook shown in the grid of the embedded page, as the pane sees it. Everything it keeps goes with the page. */
export class PageWorkbook implements WorkbookHost {
  readonly kind = "page";
  private additions: readonly Addition[] = [];
  private decisions: unknown = null;
  private readonly editListeners = new Set<() => void>();
  private readonly stopListening: () => void;

  private constructor(
    private readonly grid: PageGrid,
    private readonly fileName: string,
    private readonly dateSystem: WorkbookIn["dateSystem"],
    /** By the id of a sheet: where it came from. */
    private readonly origins: ReadonlyMap<string, Origin>,
    private readonly tables: TablesInGrid,
  ) {
    const stops = [
      grid.onLineChange((change) => tables.change(change)),
      grid.onFormula((formula) => withTableAddresses(formula, this.namedTables())),
      grid.onEdit((sheetId) => this.tellOfEdit(sheetId)),
    ];
    this.stopListening = () => stops.forEach((stop) => stop());
  }

  /** Lays a workbook out in the grid, in place of the one before. */
  static async open(grid: PageGrid, { name, workbook }: OpenedFile, options: JobOptions): Promise<PageWorkbook> {
    const sheets = await openedWorkbook(`workbook-${(opened += 1)}`, workbook, options);
    options.signal.throwIfAborted();
    setDateSystem(1900);
    grid.show(sheets);
    const origins = workbook.sheets.map(
      ({ file, dateSystem }, index) => [sheetIdAt(index), { file, dateSystem }] as const,
    );
    return new PageWorkbook(grid, name, workbook.dateSystem, new Map(origins), new TablesInGrid(workbook, sheetIdAt));
  }

  close(): void {
    this.stopListening();
  }

  async name(): Promise<string> {
    return this.fileName;
  }

  /** The person's own sheets: a report added before is no record, whatever its headings. */
  async read(options: JobOptions): Promise<WorkbookIn> {
    await this.grid.finishTyping();
    const slices = slicesOf(options);
    const added = this.addedIds();
    const sheets = this.grid.sheets().filter(({ id }) => !added.has(id));
    const read: SheetIn[] = [];
    for (const [done, sheet] of sheets.entries()) {
      options.onProgress({ step: "Reading the sheets", done, of: sheets.length });
      const cells = await this.readSheet(sheet, slices);
      if (cells.grid.rowCount > 0) read.push(cells);
    }
    return { dateSystem: this.dateSystem, sheets: read };
  }

  onEdit(listener: () => void): () => void {
    this.editListeners.add(listener);
    return () => this.editListeners.delete(listener);
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
    const ours = [...this.addedIds()].filter((id) => gone.has(id));
    ours.forEach((id) => this.grid.remove(id));
    this.additions = this.additions.filter(({ sheets }) => sheets.some((id) => this.grid.has(id)));
  }

  async showCell(sheet: string, cell: string, as?: "in sight"): Promise<void> {
    const found = this.grid.sheets().find(({ name }) => name === sheet);
    if (!found) throw new HostFailure("changed meanwhile", "That sheet is no longer there. Read the workbook again.");
    this.grid.select(found.id, cell);
    if (as !== "in sight") this.grid.takeKeyboard();
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

  private addedIds(): ReadonlySet<string> {
    return new Set(this.additions.flatMap(({ sheets }) => sheets));
  }

  /** A sheet that a run added is no record. */
  private tellOfEdit(sheetId: string): void {
    if (!this.addedIds().has(sheetId)) this.editListeners.forEach((listener) => listener());
  }

  private async readSheet({ id, name, merged }: SheetInGrid, slices: Slices): Promise<SheetIn> {
    const { file, dateSystem } = this.origins.get(id) ?? { file: undefined, dateSystem: undefined };
    const grid = await readSheetCells(this.grid.cells(id), dateSystem ?? this.dateSystem, slices);
    const isFilled = (row: number, column: number) => kindAt(grid, row, column) !== CELL.empty;
    const sheet = { name, ...fileOf({ file }), grid, tables: this.tables.of(id, isFilled), merged };
    return dateSystem === undefined ? sheet : { ...sheet, dateSystem };
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
  private async addAll(sheets: readonly SheetOut[], slices: Slices, options: JobOptions): Promise<string[]> {
    const standing = this.grid.sheets().map(({ name }) => name);
    const names = safeSheetNames([...standing, ...sheets.map(({ name }) => name)]).slice(standing.length);
    const added: string[] = [];
    try {
      for (const [done, sheet] of sheets.entries()) {
        options.onProgress({ step: "Adding sheets", done, of: sheets.length });
        const laidOut = await reportSheet(sheet, slices);
        added.push(this.grid.add(names[done] as string, laidOut));
        await slices.rest();
      }
      return added;
    } catch (error) {
      added.forEach((id) => this.grid.remove(id));
      throw error;
    }
  }

  private receiptOf({ label, sheets }: Addition): Receipt {
    const names = new Map(this.grid.sheets().map(({ id, name }) => [id, name]));
    return { label, sheets: sheets.flatMap((id) => names.get(id) ?? []) };
  }
}

function headingsOf({ top, left, right }: CellRange, at: (row: number, column: number) => unknown): string[] {
  return Array.from({ length: right - left + 1 }, (_, column) => String(at(top, left + column) ?? ""));
}
