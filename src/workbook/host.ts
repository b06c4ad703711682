import type { SheetOut } from "./sheets";
import type { WorkbookIn } from "./workbook";

/** How far a long job is: `done` of `of`, in the words of `step`. */
export interface Progress {
  readonly step: string;
  readonly done: number;
  readonly of: number;
}

export interface JobOptions {
  /** Aborted when the user cancels: the job then leaves nothing half-written and rejects with the signal's reason. */
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
}

/** What a run added to the user's workbook, so that it can be taken away again. */
export interface Receipt {
  /** Names of the sheets as they stand in the workbook, in their order. */
  readonly sheets: readonly string[];
  /** When asked for, as the user reads it: the as-of date of the report. */
  readonly label: string;
  /** The run stopped before its sheets were whole, and they could not be taken away then. */
  readonly unfinished?: true;
  /** Said once, after the run: what could not be set, though the sheets are whole. */
  readonly note?: string;
  /** Sheets that bear the mark of this run and cannot be told from a copy: they are left to the person. */
  readonly unsure?: readonly string[];
}

/** Where a file went: opened as a new workbook that is not saved yet, or downloaded. */
export type SavedAs = "opened" | "downloaded";

export type FailureKind =
  | "unreadable"
  | "changed meanwhile"
  | "locked"
  | "editing a cell"
  | "behind another workbook"
  | "busy"
  | "unanswered"
  | "left behind"
  | "too large"
  | "not supported"
  | "unknown";

/** A failure that a person can mend: `message` says in one sentence what happened and what to do. It carries no cell text. */
export class HostFailure extends Error {
  override readonly name = "HostFailure";

  constructor(
    readonly kind: FailureKind,
    message: string,
    /** Where the host is still at work on it: what to tell the person once that is done. It never rejects. */
    readonly later: Promise<string> | null = null,
  ) {
    super(message);
  }
}

/**
 * What the task pane asks of whatever holds the workbook: Excel, or the embedded page. The user's own cells are never
 * changed. No call blocks the thread for 50 ms of our own work.
 */
export interface WorkbookHost {
  readonly kind: "excel" | "page";
  /** The name shown to the user; it is never kept. */
  name(options?: JobOptions): Promise<string>;
  /**
   * Every sheet that holds something, as typed columns. They become the caller's, who may transfer their buffers to a
   * worker; `addSheets` gets them back.
   */
  read(options: JobOptions): Promise<WorkbookIn>;
  /**
   * Adds new sheets after the last one, under fresh names. Before anything is written the tables that were read are
   * compared with what stands there now; a difference fails with "changed meanwhile".
   */
  addSheets(sheets: readonly SheetOut[], read: WorkbookIn, label: string, options: JobOptions): Promise<Receipt>;
  /** What earlier runs added and is still there. */
  receipts(options?: JobOptions): Promise<readonly Receipt[]>;
  removeAdded(receipt: Receipt, options?: JobOptions): Promise<void>;
  /** Told whenever someone changes a cell of their own, where the host can tell. The answer ends it. */
  onEdit?(listener: () => void): () => void;
  /** Selects a cell, or a range such as `C2:C73`, brings it into sight, and gives it the keyboard where the host can and that is wanted. */
  showCell(sheet: string, cell: string, as?: "in sight"): Promise<void>;
  /** Repair decisions as JSON, from where the host keeps them apart from the data; null where there are none. */
  loadDecisions(options?: JobOptions): Promise<unknown>;
  /**
   * Keeps decisions beside those that are there. None is ever taken away: one that changed is changed where it stands, and
   * what a person wrote there meanwhile stays.
   */
  saveDecisions(decisions: unknown, options?: JobOptions): Promise<void>;
  /** Hands a file to the user: a download in the page, a new workbook in Excel where it can. */
  saveFile(fileName: string, bytes: Uint8Array, mimeType: string, options?: JobOptions): Promise<SavedAs>;
  /** Hands a file to the user as a download, in Excel too: nothing is opened, and nothing written into it on the way. */
  downloadFile(fileName: string, bytes: Uint8Array, mimeType: string): Promise<void>;
}
