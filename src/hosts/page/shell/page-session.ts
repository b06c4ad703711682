import { a1 } from "../../../workbook/cells";
import { HostFailure } from "../../../workbook/host";
import { saveToDisk } from "../download";
import type { GridRoom } from "../grid/grid-room";
import { PageWorkbook } from "../page-workbook";
import { type PageServices, XLSX_TYPE } from "./page-services";
import type { Notice, PageState } from "./page-state";
import { Store } from "./store";

export interface PageView {
  readonly state: PageState;
  readonly notice: Notice | null;
  readonly cellMessage: string | null;
  readonly hasReport: boolean;
  readonly hasDecisions: boolean;
}

const STARTING: PageView = {
  state: { at: "loading", step: "Starting the spreadsheet" },
  notice: null,
  cellMessage: null,
  hasReport: false,
  hasDecisions: false,
};

const SAMPLE_NAME = "Alder Fork sample";

/** What the person does with the page, from opening a workbook to saving its report. Nothing outlives the page. */
export class PageSession {
  readonly view = new Store<PageView>(STARTING);
  private workbook: PageWorkbook | null = null;
  private opening = new AbortController();
  private unmountPane = () => undefined as void;

  constructor(
    private readonly room: GridRoom,
    private readonly paneRoot: HTMLElement,
    private readonly services: PageServices,
  ) {
    room.grid.onSelect((cell) => {
      const message = room.messages.at(cell.sheetId, cell.row, cell.column);
      this.view.set({ cellMessage: message && `${a1(cell.row, cell.column)}: ${message}` });
    });
  }

  readonly openSample = (): Promise<void> =>
    this.open(SAMPLE_NAME, true, async () => {
      const response = await fetch(this.services.sampleAddress);
      if (!response.ok) throw new HostFailure("unreadable", "The sample is not there: run npm run build and reload.");
      return response.arrayBuffer();
    });

  readonly openFile = (file: File): Promise<void> =>
    file.name.toLowerCase().endsWith(".json")
      ? this.openDecisions(file)
      : this.open(file.name, false, () => file.arrayBuffer());

  readonly saveReport = async (): Promise<void> => {
    const report = this.workbook?.lastReport();
    if (!report) return;
    await this.tryTo(async () => {
      const asOf = /\d{4}-\d{2}-\d{2}/.exec(report.label)?.[0] ?? today();
      const bytes = await this.services.writeWorkbook(report.sheets, asOf);
      saveToDisk(`windowline-report-${asOf}.xlsx`, bytes, XLSX_TYPE);
      return "The report was handed to your browser's downloads.";
    });
  };

  readonly saveDecisions = async (): Promise<void> => {
    const decisions: unknown = await this.workbook?.loadDecisions();
    if (decisions === null || decisions === undefined) return;
    const bytes = new TextEncoder().encode(`${JSON.stringify(decisions, null, 2)}\n`);
    saveToDisk("windowline-decisions.json", bytes, "application/json");
  };

  private async open(name: string, isSample: boolean, load: () => Promise<ArrayBuffer>): Promise<void> {
    const before = this.view.get().state;
    this.opening.abort();
    this.opening = new AbortController();
    const { signal } = this.opening;
    this.view.set({ state: { at: "loading", step: `Opening ${name}` }, notice: null, cellMessage: null });
    try {
      const workbook = await this.services.readWorkbook(new Uint8Array(await load()));
      signal.throwIfAborted();
      this.take(await PageWorkbook.open(this.room.grid, { name, workbook }, { signal, onProgress: () => undefined }));
      this.view.set({ state: { at: "ready", name, isSample, isEmpty: workbook.sheets.length === 0 } });
    } catch (error) {
      if (!signal.aborted) this.refuse(before, wordsOf(error));
    }
  }

  private take(workbook: PageWorkbook): void {
    this.workbook?.close();
    this.workbook = workbook;
    this.room.messages.clear();
    workbook.subscribe(() => void this.lookAgain(workbook));
    this.view.set({ hasReport: false, hasDecisions: false });
    this.showPane(workbook);
  }

  private showPane(workbook: PageWorkbook): void {
    this.unmountPane();
    const root = document.createElement("div");
    this.paneRoot.replaceChildren(root);
    this.unmountPane = this.services.mountPane(root, workbook);
  }

  private async lookAgain(workbook: PageWorkbook): Promise<void> {
    const hasDecisions = (await workbook.loadDecisions()) !== null;
    this.view.set({ hasReport: workbook.lastReport() !== null, hasDecisions });
  }

  /** A workbook that is open stays open when the next one cannot be read. */
  private refuse(before: PageState, message: string): void {
    if (before.at === "ready") this.view.set({ state: before, notice: { kind: "problem", text: message } });
    else this.view.set({ state: { at: "failed", message } });
  }

  private async openDecisions(file: File): Promise<void> {
    const { workbook } = this;
    if (!workbook) return this.view.set({ notice: { kind: "problem", text: "open a workbook before its decisions." } });
    await this.tryTo(async () => {
      await workbook.saveDecisions(JSON.parse(await file.text()));
      this.showPane(workbook);
      return "The decisions of the file now count.";
    });
  }

  private async tryTo(job: () => Promise<string>): Promise<void> {
    try {
      this.view.set({ notice: { kind: "done", text: await job() } });
    } catch (error) {
      this.view.set({ notice: { kind: "problem", text: wordsOf(error) } });
    }
  }
}

/** Messages meant for a person are shown; any other could carry what is in a cell, and is not. */
function wordsOf(error: unknown): string {
  if (error instanceof HostFailure) return error.message;
  if (error instanceof SyntaxError) return "the file is not JSON: choose one that was saved with Save decisions.";
  return "Something went wrong that should not have. Reload the page and try again; nothing of yours was changed.";
}

function today(): string {
  return new Date().toISOString().slice(0, 10);
}
