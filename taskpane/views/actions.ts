import type { Decision } from "../../src/records/corrections/decisions";
import type { PageSubject } from "../../src/report/pages/make-page";
import type { SettingName } from "../../src/settings/settings";
import type { ReleasableId, TableId } from "../../src/tables/table";
import type { Receipt } from "../../src/workbook/host";
import { removeAdded, savePage, saveReport } from "../jobs/after-build";
import { buildReport } from "../jobs/build";
import { addPage, listChildren } from "../jobs/caseload";
import { keepDecisions, saveDecisionsFile, takeOverDecisions } from "../jobs/decisions";
import { cancelJob, listReceipts, type Pane } from "../jobs/pane";
import { checkAgain, readWorkbook } from "../jobs/read";
import { checkProse, openLedger, prepare, releasePart, saveLedger, saveRelease } from "../jobs/release";
import { moreCells, showCell } from "../jobs/show-cells";
import type { PreviewRow, ReleaseFormat } from "../worker/released";

/** Everything that a view can set going. Jobs tell how they ended through the state; nothing is awaited in a view. */
export interface PaneActions {
  readonly openPlace: (place: string) => void;
  readonly read: () => void;
  readonly checkAgain: () => void;
  readonly cancel: () => void;
  readonly dismiss: () => void;
  readonly build: () => void;
  readonly saveReport: () => void;
  readonly remove: (receipt: Receipt) => void;
  readonly listReceipts: () => void;
  readonly enter: (name: SettingName, value: string | readonly string[]) => void;
  readonly leaveField: (name: SettingName) => void;
  readonly chooseTable: (id: TableId, chosen: boolean) => void;
  readonly chooseTherapist: (therapist: string | null) => void;
  readonly enterVisits: (visits: string) => void;
  readonly listChildren: () => void;
  readonly addPage: (subject: PageSubject) => void;
  readonly savePage: () => void;
  readonly chooseReleaseTable: (id: ReleasableId, chosen: boolean) => void;
  readonly openLedger: (file: File) => void;
  readonly closeLedger: () => void;
  readonly prepareRelease: () => void;
  readonly saveRelease: (format: ReleaseFormat, as: "file" | "opened") => void;
  readonly saveLedger: () => void;
  readonly writeProse: (prose: string) => void;
  readonly checkProse: () => void;
  /** The next rows, and sentences, of a table of the last release. */
  readonly releaseRows: (table: number, from: number) => Promise<readonly PreviewRow[]>;
  readonly releaseSentences: (table: number, from: number) => Promise<readonly string[]>;
  /** What the workbook is open in. */
  readonly hostKind: Pane["host"]["kind"];
  readonly showCell: (sheet: string, cell: string) => void;
  readonly moreCells: (group: number) => void;
  /** Gives what keeps the decisions from standing together; empty where they were kept. */
  readonly keepDecisions: (list: readonly Decision[]) => Promise<readonly string[]>;
  readonly takeOverDecisions: (text: string) => Promise<readonly string[]>;
  readonly saveDecisionsFile: () => void;
  /** The drawing of a chart of the last report, as SVG text. */
  readonly drawChart: (chart: number, width: number) => Promise<string>;
}

export function actionsOf(pane: Pane): PaneActions {
  const { dispatch } = pane.store;
  return {
    openPlace: (place) => dispatch({ type: "place opened", place }),
    read: () => void readWorkbook(pane),
    checkAgain: () => void checkAgain(pane),
    cancel: () => cancelJob(pane),
    dismiss: () => dispatch({ type: "told", told: null }),
    build: () => void buildReport(pane),
    saveReport: () => void saveReport(pane),
    remove: (receipt) => void removeAdded(pane, receipt),
    listReceipts: () => void listReceipts(pane),
    enter: (name, value) => dispatch({ type: "entry changed", name, value }),
    leaveField: (name) => dispatch({ type: "entries seen", names: [name] }),
    chooseTable: (id, chosen) => dispatch({ type: "table chosen", id, chosen }),
    chooseTherapist: (therapist) => dispatch({ type: "therapist chosen", therapist }),
    enterVisits: (visits) => dispatch({ type: "visits entered", visits }),
    listChildren: () => void listChildren(pane),
    addPage: (subject) => void addPage(pane, subject),
    savePage: () => void savePage(pane),
    chooseReleaseTable: (id, chosen) => dispatch({ type: "release table chosen", id, chosen }),
    openLedger: (file) => void openLedger(pane, file),
    closeLedger: () => dispatch({ type: "ledger opened", ledger: null }),
    prepareRelease: () => void prepare(pane),
    saveRelease: (format, as) => void saveRelease(pane, format, as),
    saveLedger: () => void saveLedger(pane),
    writeProse: (prose) => dispatch({ type: "prose written", prose }),
    checkProse: () => void checkProse(pane),
    releaseRows: (table, from) => releasePart(pane, "releaseRows", table, from),
    releaseSentences: (table, from) => releasePart(pane, "releaseSentences", table, from),
    hostKind: pane.host.kind,
    showCell: (sheet, cell) => void showCell(pane, sheet, cell),
    moreCells: (group) => void moreCells(pane, group),
    keepDecisions: (list) => keepDecisions(pane, list),
    takeOverDecisions: (text) => takeOverDecisions(pane, text),
    saveDecisionsFile: () => void saveDecisionsFile(pane),
    drawChart: (chart, width) => pane.client.ask("chart", { chart, width }),
  };
}
