import type { Decision } from "../../src/records/corrections/decisions";
import type { Choice } from "../../src/records/understanding/choices";
import type { SameChild, Understanding } from "../../src/records/understanding/understanding";
import type { SettingName } from "../../src/settings/settings";
import type { ReleasableId, TableId } from "../../src/tables/table";
import type { Progress, Receipt } from "../../src/workbook/host";
import type { RecordsFound, TableChoice } from "../worker/records/found";
import type { CaseloadListed, PageMade } from "../worker/caseload/listed";
import type { Compared, LastRead, MadeAgain } from "../worker/last/last";
import type { Made } from "../worker/report/made";
import type { CaseloadAsk, QuestionChoice } from "../worker/messages";
import type { ProseChecked, ReleaseMade, ReleaseRefusal, TriedWay } from "../worker/release/released";

export interface PaneState {
  readonly place: string;
  readonly bookName: string;
  readonly job: Job | null;
  readonly told: Told | null;
  /** What was read of the records; null until the workbook was read. */
  readonly found: RecordsFound | null;
  /** A cell, a setting or a correction changed since `found` was read. */
  readonly foundIsOld: boolean;
  /** How the workbook is understood, with the choices made since; null until it was read. */
  readonly understanding: Understanding | null;
  /** Choices that are not confirmed yet. */
  readonly choicesMade: readonly ChoiceMade[];
  readonly decisions: DecisionsState;
  readonly quarter: QuarterState;
  readonly caseload: CaseloadState;
  readonly release: ReleaseState;
  readonly unsaved: Unsaved;
  readonly receipts: readonly Receipt[];
  /** Why what was added could not be listed; null where `receipts` is the whole list. */
  readonly receiptsUnread: string | null;
  readonly choices: {
    readonly tables: readonly TableChoice[];
    readonly records: readonly RecordHeadings[];
    readonly questions: readonly QuestionChoice[];
  };
}

export interface RecordHeadings {
  readonly table: string;
  readonly headings: readonly string[];
}

export type JobKind =
  | "reading"
  | "building"
  | "comparing"
  | "repeating"
  | "listing"
  | "adding"
  | "removing"
  | "saving"
  | "opening"
  | "preparing"
  | "trying"
  | "checking";

/** The one thing the pane is doing. */
export interface Job {
  readonly kind: JobKind;
  readonly progress: Progress | null;
  readonly cancelling: boolean;
}

/** What the pane has to say about the last thing done. */
export interface Told {
  /** `stopped`: it could not be done, and a person can mend it. */
  readonly tone: "done" | "stopped";
  readonly text: string;
}

export interface DecisionsState {
  readonly list: readonly Decision[];
  /** Why the workbook did not hand them over: then `list` is not what it keeps. Null once they were loaded. */
  readonly unread: string | null;
  /** Why what the workbook keeps could not be read; nothing is saved over it until the user says so. */
  readonly messages: readonly string[];
}

export type Entries = Readonly<Partial<Record<SettingName, string | readonly string[]>>>;

export interface QuarterState {
  readonly entries: Entries;
  /** Fields whose messages are shown: those left once, or all after a try to build. */
  readonly seen: readonly SettingName[];
  readonly tables: readonly TableId[];
  /** How often the report was asked for while a field wanted a look. */
  readonly refused: number;
  readonly made: Made | null;
  /** Something changed since that the report depends on. */
  readonly isOld: boolean;
  readonly last: LastState;
}

/** The file of last quarter, and what came of it. */
export interface LastState {
  /** Null where none was chosen. */
  readonly file: LastFile | null;
  /** The day of the figures of a workbook, as written. */
  readonly asOf: string;
  /** Rows that the last report had and the workbook has not. */
  readonly lost: readonly string[];
  readonly compared: Compared | null;
  /** Something changed since that the comparison depends on. */
  readonly isOld: boolean;
  readonly again: MadeAgain | null;
}

export interface LastFile extends LastRead {
  readonly name: string;
  /** It is only read, and goes no farther than the worker. */
  readonly bytes: Uint8Array;
}

export interface CaseloadState {
  /** The one chosen; null where none is. */
  readonly therapist: string | null;
  /** Visits to plan for, as written. */
  readonly visits: string;
  /** Whether the messages of the fields are shown. */
  readonly seen: boolean;
  /** How often the list was asked for while a field wanted a look. */
  readonly refused: number;
  readonly listed: CaseloadListed | null;
  /** What the list was made with, so that a page says what its line says. */
  readonly asked: CaseloadAsk | null;
  /** Something changed since that the list depends on. */
  readonly isOld: boolean;
  readonly page: PageMade | null;
}

export interface ReleaseState {
  /** The questions that the figures are to answer; none where whole tables are chosen. */
  readonly questions: readonly QuestionChoice[];
  readonly tables: readonly ReleasableId[];
  readonly ledger: LedgerOpened | null;
  /** How often a release was asked for while a field wanted a look. */
  readonly refused: number;
  readonly made: ReleaseMade | null;
  readonly refusal: ReleaseRefusal | null;
  /** What was tried to show more; null until it was asked for. */
  readonly tried: readonly TriedWay[] | null;
  /** Something changed since that the release depends on. */
  readonly isOld: boolean;
  /** Whether a file of the release was saved: then its ledger is to be saved too. */
  readonly isSaved: boolean;
  /** Whether the ledger with this release in it was saved. */
  readonly isLogged: boolean;
  /** A text that is to go with the figures, and what was found in it; null where it was not checked as it stands. */
  readonly prose: string;
  readonly checked: ProseChecked | null;
}

/** The ledger of earlier releases, as it was opened or last saved. It holds no hidden value and nothing of a child. */
export interface LedgerOpened {
  readonly fileName: string;
  readonly text: string;
  readonly releases: number;
  readonly lines: readonly string[];
  readonly last: string | null;
}

/** One act upon the understanding; a pair that was joined is no longer suggested. */
export interface ChoiceMade {
  readonly choice: Choice;
  readonly joined?: SameChild;
}

/** What was made and is held by the pane alone. */
export interface Unsaved {
  readonly corrections: boolean;
  readonly report: boolean;
  readonly page: boolean;
}

export type PaneAction =
  | { readonly type: "choice made"; readonly made: ChoiceMade }
  | { readonly type: "choices confirmed" }
  | { readonly type: "place opened"; readonly place: string }
  | { readonly type: "book named"; readonly name: string }
  | { readonly type: "job started"; readonly kind: JobKind }
  | { readonly type: "job moved"; readonly progress: Progress }
  | { readonly type: "job cancelling" }
  | { readonly type: "job ended"; readonly told: Told | null }
  | { readonly type: "records read"; readonly found: RecordsFound }
  /** Someone changed a cell of the workbook. */
  | { readonly type: "records edited" }
  | { readonly type: "cells shown"; readonly group: number; readonly cells: RecordsFound["groups"][number]["cells"] }
  | { readonly type: "decisions loaded"; readonly list: readonly Decision[]; readonly messages: readonly string[] }
  | { readonly type: "decisions changed"; readonly list: readonly Decision[] }
  | { readonly type: "entry changed"; readonly name: SettingName; readonly value: string | readonly string[] }
  | { readonly type: "entries seen"; readonly names: readonly SettingName[] }
  | { readonly type: "build refused" }
  | { readonly type: "table chosen"; readonly id: TableId; readonly chosen: boolean }
  | { readonly type: "choices known"; readonly choices: PaneState["choices"] }
  | { readonly type: "report made"; readonly made: Made }
  /** Its first sheet, by the name that it got. */
  | { readonly type: "report added"; readonly firstSheet: string }
  | { readonly type: "report saved" }
  | { readonly type: "page saved" }
  | { readonly type: "corrections saved" }
  /** The worker no longer holds the report: it can be neither saved nor drawn. */
  | { readonly type: "report forgotten" }
  | { readonly type: "last chosen"; readonly file: LastFile | null; readonly asOf: string }
  | { readonly type: "last day entered"; readonly asOf: string }
  | { readonly type: "rows lost"; readonly lost: readonly string[] }
  | { readonly type: "comparison made"; readonly compared: Compared; readonly lost: readonly string[] }
  /** The worker no longer holds the comparison. */
  | { readonly type: "comparison forgotten" }
  | { readonly type: "report made again"; readonly again: MadeAgain }
  | { readonly type: "therapist chosen"; readonly therapist: string | null }
  | { readonly type: "visits entered"; readonly visits: string }
  | { readonly type: "caseload refused" }
  | { readonly type: "caseload listed"; readonly listed: CaseloadListed; readonly asked: CaseloadAsk }
  | { readonly type: "page made"; readonly page: PageMade }
  /** The worker no longer holds the page: it cannot be saved. */
  | { readonly type: "page forgotten" }
  | { readonly type: "release table chosen"; readonly id: ReleasableId; readonly chosen: boolean }
  | { readonly type: "release question chosen"; readonly question: QuestionChoice; readonly chosen: boolean }
  | { readonly type: "release tried"; readonly ways: readonly TriedWay[] }
  | { readonly type: "ledger opened"; readonly ledger: LedgerOpened | null }
  | { readonly type: "ledger saved"; readonly ledger: LedgerOpened }
  | { readonly type: "release asked" }
  | { readonly type: "release refused by a field" }
  | { readonly type: "release made"; readonly made: ReleaseMade }
  | { readonly type: "release refused"; readonly refusal: ReleaseRefusal }
  | { readonly type: "release saved" }
  /** The worker no longer holds the release: it can be neither looked at nor saved. */
  | { readonly type: "release forgotten" }
  | { readonly type: "prose written"; readonly prose: string }
  | { readonly type: "prose checked"; readonly checked: ProseChecked }
  | { readonly type: "receipts unread"; readonly why: string }
  | { readonly type: "decisions unread"; readonly why: string }
  | { readonly type: "receipts known"; readonly receipts: readonly Receipt[] }
  | { readonly type: "told"; readonly told: Told | null };
