import type { PageSubject } from "../../src/report/pages/make-page";
import type { Choice } from "../../src/records/understanding/choices";
import type { SettingName } from "../../src/settings/settings";
import type { ReleasableId, TableId } from "../../src/tables/table";
import { removeAdded, saveComparison, saveNumbers, savePage, saveReport, saveTemplate } from "../jobs/after-build";
import { buildReport } from "../jobs/build";
import { addPage, listChildren } from "../jobs/caseload";
import { confirmUnderstanding, joinChildren, keepDecisions, openCorrections, saveCorrections } from "../jobs/decisions";
import { figureAnswer } from "../jobs/figures";
import { addComparison, chooseLast, compare, repeatLast } from "../jobs/last-quarter";
import { cancelJob, listReceipts, type Pane } from "../jobs/pane";
import { checkAgain, readWorkbook } from "../jobs/read";
import {
  checkProse,
  openLedger,
  prepare,
  prepareThatWay,
  releasePart,
  saveLedger,
  saveRelease,
  tryMore,
} from "../jobs/release";
import { moreCells, showCell } from "../jobs/show-cells";
import type { FigureAsk } from "../worker/messages";
import type { PaneAction } from "../state/pane-state";
import type { QuestionChoice } from "../worker/messages";
import type { TriedWay } from "../worker/release/released";

/** Everything that a view can set going, each in one line. A view need not wait: jobs say through the state how they ended. */
export type PaneActions = ReturnType<typeof actionsOf>;

export function actionsOf(pane: Pane) {
  const { dispatch } = pane.store;
  /** A job of the pane. */
  const run =
    <Words extends unknown[]>(job: (pane: Pane, ...words: Words) => Promise<unknown>) =>
    (...words: Words): void =>
      void job(pane, ...words);
  /** A change of the state alone. */
  const say =
    <Words extends unknown[]>(action: (...words: Words) => PaneAction) =>
    (...words: Words): void =>
      dispatch(action(...words));
  return {
    hostKind: pane.host.kind,
    cancel: () => cancelJob(pane),
    dismiss: say(() => ({ type: "told", told: null })),
    openPlace: say((place: string) => ({ type: "place opened", place })),

    read: run(readWorkbook),
    checkAgain: run(checkAgain),
    showCell: run(showCell),
    moreCells: run(moreCells),
    /** Gives what keeps the corrections from standing together; empty where they were kept. */
    keepDecisions: (...words: Rest<typeof keepDecisions>) => keepDecisions(pane, ...words),
    openCorrections: (text: string) => openCorrections(pane, text),
    saveCorrections: run(saveCorrections),
    choose: say((choice: Choice) => ({ type: "choice made", made: { choice } })),
    joinChildren: run(joinChildren),
    confirm: run(confirmUnderstanding),

    saveTemplate: run(saveTemplate),

    enter: say((name: SettingName, value: string | readonly string[]) => ({ type: "entry changed", name, value })),
    leaveField: say((name: SettingName) => ({ type: "entries seen", names: [name] })),
    chooseTable: say((id: TableId, chosen: boolean) => ({ type: "table chosen", id, chosen })),
    build: run((of: Pane) => buildReport(of)),
    buildAnyway: run((of: Pane) => buildReport(of, true)),
    saveReport: run(saveReport),
    saveNumbers: run(saveNumbers),

    chooseLast: run((of: Pane, file: File) => chooseLast(of, file)),
    leaveLast: say(() => ({ type: "last chosen", file: null, asOf: "" })),
    enterLastDay: say((asOf: string) => ({ type: "last day entered", asOf })),
    compare: run(compare),
    addComparison: run(addComparison),
    saveComparison: run(saveComparison),
    repeatLast: run(repeatLast),

    /** The drawing of a chart of the last report, as SVG text. */
    drawChart: (of: "report" | "comparison", chart: number, width: number) =>
      pane.client.ask("chart", { of, chart, width }),
    /** How firm a figure of the last report is, and the rows behind it; null where that failed, which is then told. */
    firm: (ask: FigureAsk) => figureAnswer(pane, "firm", ask),
    behind: (ask: FigureAsk & { readonly from: number }) => figureAnswer(pane, "behind", ask),
    remove: run(removeAdded),
    listReceipts: run(listReceipts),

    chooseTherapist: say((therapist: string | null) => ({ type: "therapist chosen", therapist })),
    enterVisits: say((visits: string) => ({ type: "visits entered", visits })),
    listChildren: run(listChildren),
    addPage: run((of: Pane, subject: PageSubject) => addPage(of, subject)),
    savePage: run(savePage),

    chooseReleaseTable: say((id: ReleasableId, chosen: boolean) => ({ type: "release table chosen", id, chosen })),
    askRelease: say((question: QuestionChoice, chosen: boolean) => ({
      type: "release question chosen",
      question,
      chosen,
    })),
    tryMore: run(tryMore),
    prepareThatWay: run((of: Pane, way: TriedWay) => prepareThatWay(of, way)),
    openLedger: run((of: Pane, file: File) => openLedger(of, file)),
    closeLedger: say(() => ({ type: "ledger opened", ledger: null })),
    prepareRelease: run(prepare),
    saveRelease: run(saveRelease),
    saveLedger: run(saveLedger),
    writeProse: say((prose: string) => ({ type: "prose written", prose })),
    checkProse: run(checkProse),
    /** The next rows, and sentences, of a table of the last release. */
    releaseRows: (table: number, from: number) => releasePart(pane, "releaseRows", table, from),
    releaseSentences: (table: number, from: number) => releasePart(pane, "releaseSentences", table, from),
  };
}

type Rest<Job> = Job extends (pane: Pane, ...words: infer Words) => unknown ? Words : never;
