import type { Day } from "../../src/age/day";
import type { Decision } from "../../src/records/corrections/decisions";
import type { PageSubject } from "../../src/report/pages/make-page";
import type { SameChild } from "../../src/records/understanding/understanding";
import type { Settings } from "../../src/settings/settings";
import type { QuestionId } from "../../src/release/answers/questions";
import type { ReleasableId, TableId } from "../../src/tables/table";
import type { GridColumn } from "../../src/workbook/cells";
import type { CellOut, SheetOut } from "../../src/workbook/sheets";
import type { SheetIn, WorkbookIn } from "../../src/workbook/workbook";
import type { FoundCell, RecordsFound, TableChoice } from "./records/found";
import type { CaseloadBuilt, PageMade } from "./caseload/listed";
import type { ComparedAnswer, LastRead, MadeAgain } from "./last/last";
import type { BehindAnswer, Built, FirmAnswer } from "./report/made";
import type {
  LedgerRead,
  PreviewRow,
  ProseChecked,
  ReleaseAsk,
  ReleaseBuilt,
  ReleaseFormat,
  ReleaseTried,
} from "./release/released";

/** What the pane asks of its worker, and the answer to each. */
export interface Requests {
  /** What there is to choose from, before any workbook is read. */
  choices: { ask: object; answer: Choices };
  /** Columns come transferred; texts follow in parts, so that none takes long to cross. */
  open: { ask: { readonly workbook: OpenedWorkbook }; answer: null };
  strings: { ask: { readonly sheet: number; readonly part: readonly string[] }; answer: null };
  check: { ask: { readonly settings: Settings; readonly decisions: readonly Decision[] }; answer: RecordsFound };
  /** Why what was settled does not fit the workbook that is held; null where it does. */
  fits: { ask: { readonly decisions: readonly Decision[] }; answer: string | null };
  /** The correction that joins two ids. */
  joining: { ask: SameChild; answer: Decision };
  cells: { ask: { readonly group: number; readonly from: number }; answer: readonly FoundCell[] };
  build: { ask: BuildAsk; answer: Built };
  /** How firm one figure of the last report is, and the rows that it is made of. */
  firm: { ask: FigureAsk; answer: FirmAnswer };
  behind: { ask: FigureAsk & { readonly from: number }; answer: BehindAnswer };
  /** REPORT.json of the last report. */
  numbers: { ask: object; answer: Uint8Array<ArrayBuffer> };
  /** What a file of last quarter is. */
  last: { ask: { readonly bytes: Uint8Array }; answer: LastRead };
  compare: { ask: CompareAsk; answer: ComparedAnswer };
  again: { ask: { readonly bytes: Uint8Array; readonly decisions: readonly Decision[] }; answer: MadeAgain };
  caseload: { ask: CaseloadAsk; answer: CaseloadBuilt };
  page: { ask: PageAsk; answer: PageMade };
  ledger: { ask: { readonly text: string }; answer: LedgerRead };
  release: { ask: ReleaseAsk; answer: ReleaseBuilt };
  /** What would show more than the release asked for, each way tried. */
  releaseTries: { ask: ReleaseAsk; answer: ReleaseTried };
  /** The next rows, and sentences, of a table of the last release. */
  releaseRows: { ask: ReleasePartAsk; answer: readonly PreviewRow[] };
  releaseSentences: { ask: ReleasePartAsk; answer: readonly string[] };
  prose: { ask: { readonly text: string }; answer: ProseChecked };
  releaseFile: { ask: { readonly format: ReleaseFormat | "ledger" }; answer: Uint8Array<ArrayBuffer> };
  /** The sheets of what was made last of a kind. Rows come in parts before the answer. */
  sheets: { ask: { readonly of: MadeKind }; answer: readonly SheetHead[] };
  /** Gives the columns of the workbook back, transferred. The worker holds it no longer. */
  giveBack: { ask: object; answer: readonly (readonly (GridColumn | undefined)[])[] };
  file: { ask: { readonly of: MadeKind }; answer: Uint8Array<ArrayBuffer> };
  /** An empty workbook to keep records in. */
  template: { ask: object; answer: Uint8Array<ArrayBuffer> };
  chart: { ask: ChartAsk; answer: string };
}

export type RequestKind = keyof Requests;
export type Ask<K extends RequestKind> = Requests[K]["ask"];
export type Answer<K extends RequestKind> = Requests[K]["answer"];

/** What is told before the answer. */
export interface WorkEvents {
  readonly onStep: (step: string) => void;
  readonly onRows: (part: RowsPart) => void;
}

/** One method a request: a request that nobody answers does not compile. */
export type Answerers = {
  readonly [K in RequestKind]: (ask: Ask<K>, events: WorkEvents) => Answer<K> | Promise<Answer<K>>;
};

export interface Choices {
  readonly tables: readonly TableChoice[];
  /** The headings of each table of records. */
  readonly records: readonly { readonly table: string; readonly headings: readonly string[] }[];
  /** What a release may be asked. */
  readonly questions: readonly QuestionChoice[];
}

export interface QuestionChoice {
  readonly id: QuestionId;
  readonly asks: string;
  /** The table that answers it. */
  readonly table: ReleasableId;
}

export interface BuildAsk {
  readonly settings: Settings;
  readonly decisions: readonly Decision[];
  readonly tables: readonly TableId[];
  /** The file of last quarter, where one was chosen: rows that its report had and the workbook has not are told first. */
  readonly last: Uint8Array | null;
  /** The person knows of lost rows, and wants the report all the same. */
  readonly goesOn: boolean;
}

export interface CompareAsk {
  readonly settings: Settings;
  readonly decisions: readonly Decision[];
  readonly bytes: Uint8Array;
  /** The day of the figures of an earlier workbook; a report brings its own. */
  readonly earlierAsOf: Day | null;
}

export interface CaseloadAsk {
  readonly settings: Settings;
  readonly decisions: readonly Decision[];
  /** Null where none was chosen: right where there is one to choose at most. */
  readonly therapist: string | null;
  readonly visits: number;
}

export interface PageAsk {
  readonly settings: Settings;
  readonly decisions: readonly Decision[];
  readonly subject: PageSubject;
  readonly visits: number;
}

export interface ReleasePartAsk {
  readonly table: number;
  readonly from: number;
}

/** A figure of a finding of the last report, both by their place. */
export interface FigureAsk {
  readonly finding: number;
  readonly figure: number;
}

export interface ChartAsk {
  readonly of: "report" | "comparison";
  readonly chart: number;
  readonly width: number;
}

/** What the worker makes sheets of, and keeps until the next one of its kind. */
export type MadeKind = "report" | "page" | "comparison";

/** A workbook without the texts of its grids. */
export interface OpenedWorkbook extends Omit<WorkbookIn, "sheets"> {
  readonly sheets: readonly (Omit<SheetIn, "grid"> & {
    readonly rowCount: number;
    readonly columns: readonly (GridColumn | undefined)[];
  })[];
}

/** A sheet whose rows come in parts: here it has none. */
export type SheetHead = SheetOut;

export interface RowsPart {
  readonly sheet: number;
  readonly rows: readonly (readonly CellOut[])[];
  readonly heights: readonly (readonly [row: number, points: number])[];
}

export type ToWorker = {
  [K in RequestKind]: { readonly id: number; readonly kind: K; readonly ask: Ask<K> };
}[RequestKind];

export type FromWorker = { readonly id: number } & (
  | { readonly kind: "step"; readonly step: string }
  | { readonly kind: "rows"; readonly part: RowsPart }
  | { readonly kind: "done"; readonly answer: unknown }
  | { readonly kind: "failed"; readonly failure: Failure }
);

/** `message` only where it is one of ours, written for people: any other could carry the text of a cell. */
export interface Failure {
  readonly name: string;
  readonly message: string | null;
}
