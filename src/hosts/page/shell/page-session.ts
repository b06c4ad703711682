import { a1 } from "../../../workbook/cells";
import { HostFailure } from "../../../workbook/host";
import { oneWorkbook, type SourceIn, withOwnNames } from "../../../workbook/sources";
import type { WorkbookIn } from "../../../workbook/workbook";
import type { GridRoom } from "../grid/grid-room";
import { PageWorkbook } from "../page-workbook";
import type { MountedPane, PageServices } from "./page-services";
import type { Notice, PageState, Question } from "./page-state";
import { Store } from "./store";

export interface PageView {
  readonly state: PageState;
  readonly notice: Notice | null;
  readonly question: Question | null;
  readonly cellMessage: string | null;
}

export const STARTING: PageView = {
  state: { at: "loading", step: "Starting the spreadsheet" },
  notice: null,
  question: null,
  cellMessage: null,
};

const SAMPLE_NAME = "Alder Fork sample";

/** What the person does with the page, from opening a workbook to the next one. Nothing outlives the page. */
export class PageSession {
  readonly view = new Store<PageView>(STARTING);
  private workbook: PageWorkbook | null = null;
  private opening = new AbortController();
  private pane: MountedPane | null = null;
  private isEdited = false;

  constructor(
    private readonly room: GridRoom,
    private readonly paneRoot: HTMLElement,
    private readonly services: PageServices,
  ) {
    room.grid.onSelect((cell) => {
      const message = room.messages.at(cell.sheetId, cell.row, cell.column);
      this.view.set({ cellMessage: message && `${a1(cell.row, cell.column)}: ${message}` });
    });
    window.addEventListener("beforeunload", (event) => {
      if (this.unsaved().length > 0) event.preventDefault();
    });
  }

  readonly openSample = (): void =>
    this.ask(SAMPLE_NAME, () =>
      this.open(SAMPLE_NAME, true, async () => {
        const response = await fetch(this.services.sampleAddress);
        if (!response.ok) throw new HostFailure("unreadable", "The sample is not there: run npm run build and reload.");
        return this.services.readWorkbook(new Uint8Array(await response.arrayBuffer()));
      }),
    );

  /** Several files are read as one program, by name, since browsers hand them over in no order that a person chose. */
  readonly openFiles = (files: readonly File[]): void => {
    const sorted = [...files].sort((a, b) => (a.name < b.name ? -1 : 1));
    const name = namesOf(sorted);
    this.ask(name, () => this.open(name, false, () => this.readAll(sorted)));
  };

  private async readAll(files: readonly File[]): Promise<WorkbookIn> {
    const sources: SourceIn[] = [];
    for (const file of files) {
      const bytes = new Uint8Array(await file.arrayBuffer());
      sources.push({ file: file.name, workbook: await this.read(bytes, files.length > 1 ? `${file.name}: ` : "") });
    }
    return withOwnNames(oneWorkbook(sources));
  }

  private async read(bytes: Uint8Array, before: string): Promise<WorkbookIn> {
    try {
      return await this.services.readWorkbook(bytes);
    } catch (error) {
      throw error instanceof HostFailure ? new HostFailure(error.kind, `${before}${error.message}`) : error;
    }
  }

  /** Opens at once where nothing would be lost. */
  private ask(name: string, open: () => Promise<void>): void {
    const unsaved = this.unsaved();
    if (unsaved.length === 0) return void open();
    const close = () => this.view.set({ question: null });
    this.view.set({
      question: {
        text: `Not saved yet: ${unsaved.join(", ")}. Open ${name} all the same?`,
        stay: close,
        goOn: () => {
          close();
          void open();
        },
      },
    });
  }

  private unsaved(): readonly string[] {
    return [...(this.pane?.unsaved() ?? []), ...(this.isEdited ? ["the changes you typed into cells"] : [])];
  }

  private async open(name: string, isSample: boolean, load: () => Promise<WorkbookIn>): Promise<void> {
    const before = this.view.get().state;
    this.opening.abort();
    this.opening = new AbortController();
    const { signal } = this.opening;
    this.view.set({ state: { at: "loading", step: `Opening ${name}` }, notice: null, cellMessage: null });
    try {
      const workbook = await load();
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
    this.isEdited = false;
    workbook.onEdit(() => this.noticeEdit());
    this.room.messages.clear();
    this.pane?.unmount();
    const root = document.createElement("div");
    this.paneRoot.replaceChildren(root);
    this.pane = this.services.mountPane(root, workbook);
  }

  private noticeEdit(): void {
    if (this.isEdited) return;
    this.isEdited = true;
    this.view.set({ notice: { kind: "done", text: EDITED } });
  }

  /** A workbook that is open stays open when the next one cannot be read. */
  private refuse(before: PageState, message: string): void {
    if (before.at === "ready") this.view.set({ state: before, notice: { kind: "problem", text: message } });
    else this.view.set({ state: { at: "failed", message } });
  }
}

/** `HILL.xlsx and 2 others`. */
function namesOf([first, ...others]: readonly File[]): string {
  const more = others.length === 1 ? (others[0] as File).name : `${others.length} others`;
  return `${first?.name ?? ""}${others.length === 0 ? "" : ` and ${more}`}`;
}

const EDITED =
  "What you type here stays on this page. To keep a change, make it in your own file too; to keep results of formulas, copy the cells.";

/** Messages meant for a person are shown; any other could carry what is in a cell, and is not. */
function wordsOf(error: unknown): string {
  if (error instanceof HostFailure) return error.message;
  return "The workbook could not be opened. Reload the page and try again; nothing of yours was changed.";
}
