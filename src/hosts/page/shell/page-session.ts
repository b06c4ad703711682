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
}

export const STARTING: PageView = {
  state: { at: "loading", step: "Starting the spreadsheet" },
  notice: null,
  cellMessage: null,
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

  readonly openFile = (file: File): Promise<void> => this.open(file.name, false, () => file.arrayBuffer());

  /** The workbook as it stands, reports included, as a file of values. */
  readonly saveWorkbook = async (): Promise<void> => {
    const { workbook } = this;
    if (!workbook) return;
    this.view.set({ notice: { kind: "done", text: "Writing the workbook…" } });
    try {
      const read = await workbook.readWhole({ signal: this.opening.signal, onProgress: () => undefined });
      const bytes = await this.services.writeWorkbook(read, workbook.sheetsMade(), today());
      saveToDisk(fileNameFor(await workbook.name()), bytes, XLSX_TYPE);
      this.view.set({
        notice: { kind: "done", text: "Handed to your browser's downloads. Formulas went as their results." },
      });
    } catch (error) {
      this.view.set({ notice: { kind: "problem", text: wordsOf(error) } });
    }
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
    this.unmountPane();
    const root = document.createElement("div");
    this.paneRoot.replaceChildren(root);
    this.unmountPane = this.services.mountPane(root, workbook);
  }

  /** A workbook that is open stays open when the next one cannot be read. */
  private refuse(before: PageState, message: string): void {
    if (before.at === "ready") this.view.set({ state: before, notice: { kind: "problem", text: message } });
    else this.view.set({ state: { at: "failed", message } });
  }
}

/** Messages meant for a person are shown; any other could carry what is in a cell, and is not. */
function wordsOf(error: unknown): string {
  if (error instanceof HostFailure) return error.message;
  return "Something went wrong that should not have. Reload the page and try again; nothing of yours was changed.";
}

function today(): string {
  return new Date().toISOString().slice(0, 10);
}

function fileNameFor(name: string): string {
  return `${name.replace(/\.xlsx$/i, "")} saved.xlsx`;
}
