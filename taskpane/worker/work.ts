import { dayFromIso, type Day, isoOf } from "../../src/age/day";
import { dayInWords } from "../../src/words/dates";
import { buildCohort } from "../../src/cohort/cohort";
import { sourceOf } from "../../src/records/fingerprint";
import { sheetNameOf } from "../../src/report/sheets/sheet-plan";
import type { Decision } from "../../src/records/corrections/decisions";
import type { Records } from "../../src/records/records";
import { TABLES } from "../../src/records/tables";
import { sameChildDecision } from "../../src/records/understanding/same-child";
import { OtherWorkbook, understand } from "../../src/records/understanding/understand";
import { QUESTIONS } from "../../src/release/answers/questions";
import { isReleasable, TABLE_CATALOGUE, TABLES_OF_ONE_RUN } from "../../src/tables/catalogue";
import { tableContext } from "../../src/tables/context";
import type { SheetOut } from "../../src/workbook/sheets";
import type { WorkbookIn } from "../../src/workbook/workbook";
import type { ReportChart } from "./charts/preview";
import { cellsFrom, type GroupedFindings } from "./records/finding-groups";
import type { FoundCell, RecordsFound } from "./records/found";
import { Held } from "./load";
import type { CaseloadBuilt, PageMade } from "./caseload/listed";
import type { ComparedAnswer, LastRead, MadeAgain } from "./last/last";
import type { KeptComparison } from "./last/last-quarter";
import type { BehindAnswer, Built, FirmAnswer } from "./report/made";
import type { KeptReport, KeptSheets } from "./report/make-report";
import { meansOf } from "./records/repairs";
import type {
  Answer,
  Answerers,
  Ask,
  BuildAsk,
  CaseloadAsk,
  Choices,
  MadeKind,
  PageAsk,
  SheetHead,
  WorkEvents,
} from "./messages";
import { type ReadFound, readFound } from "./records/read-found";
import type { LedgerRead, PreviewRow, ProseChecked, ReleaseAsk, ReleaseBuilt, ReleaseTried } from "./release/released";
import type { Releases } from "./release/releases";
import { reportOrRefuse } from "./refused";
import { headOf, partsOf } from "./sheet-parts";

/** What is loaded only when it is asked for. */
export interface WorkTools {
  readonly writeFile: (sheets: readonly SheetOut[], created: Day) => Promise<Uint8Array<ArrayBuffer>>;
  readonly drawChart: (chart: ReportChart, width: number) => Promise<string>;
  readonly readFile: (bytes: Uint8Array) => Promise<WorkbookIn>;
  readonly loadReleases: () => Promise<Releases>;
  /** CHANGELOG.md. */
  readonly readChangelog: () => Promise<string>;
}

type Steps = Pick<WorkEvents, "onStep">;

/**
 * Everything that takes time, away from the pane: it holds one workbook, and the last report and page made of it. What makes
 * reports, caseloads and pages is loaded when the first is asked for, so that the pane opens sooner.
 */
export class Work implements Answerers {
  private held: Held | null = null;
  private groups: readonly GroupedFindings[] = [];
  private report: KeptReport | null = null;
  private lastPage: KeptSheets | null = null;
  private comparison: KeptComparison | null = null;
  private loading: Promise<Releases> | null = null;

  constructor(private readonly tools: WorkTools) {}

  choices(): Choices {
    return {
      tables: TABLES_OF_ONE_RUN.map((id) => {
        const { about, internal } = TABLE_CATALOGUE[id];
        const choice = { name: sheetNameOf(id), about, internal };
        return isReleasable(id) ? { ...choice, id, releasable: true } : { ...choice, id, releasable: false };
      }),
      records: TABLES.map(({ name }) => ({ table: name, headings: meansOf(name) })),
      questions: QUESTIONS.map(({ id, asks, table }) => ({ id, asks, table })),
    };
  }

  open({ workbook }: Ask<"open">): null {
    this.held = new Held(workbook);
    return null;
  }

  strings({ sheet, part }: Ask<"strings">): null {
    this.needHeld().addStrings(sheet, part);
    return null;
  }

  check(ask: Ask<"check">): RecordsFound {
    return this.read(ask).found;
  }

  fits({ decisions }: Ask<"fits">): string | null {
    try {
      understand(this.needHeld().workbook, { settings: {}, decisions });
      return null;
    } catch (error) {
      if (error instanceof OtherWorkbook) return error.message;
      throw error;
    }
  }

  joining(pair: Ask<"joining">): Decision {
    return sameChildDecision(this.needHeld().workbook, pair);
  }

  cells({ group, from }: Ask<"cells">): readonly FoundCell[] {
    const findings = this.groups[group];
    return findings ? cellsFrom(findings, from) : [];
  }

  async build({ settings, decisions, tables, last, goesOn }: BuildAsk, { onStep }: Steps): Promise<Built> {
    onStep("Reading the records");
    const { found, records } = this.read({ settings, decisions });
    this.report = null;
    if (!records) return { found, made: null, lost: [] };
    const lost = last === null || goesOn ? [] : await this.lost(last, { settings, decisions }, records);
    if (lost.length > 0) return { found, made: null, lost };
    const source = sourceOf(this.needHeld().workbook, records, decisions);
    const { keep, madeOf, runReport } = await import("./report/make-report");
    const report = reportOrRefuse(runReport(records, { settings, tables, source, onStep }));
    onStep("Laying out the sheets");
    const asOf = dayFromIso(String(report.settings.asOf)) as Day;
    this.report = keep(report, asOf, records, settings);
    return { found, made: madeOf(report, this.report), lost };
  }

  async firm({ finding, figure }: Ask<"firm">): Promise<FirmAnswer> {
    return (await import("./report/make-report")).firm(this.needReport(), finding, figure);
  }

  async behind({ finding, figure, from }: Ask<"behind">): Promise<BehindAnswer> {
    return (await import("./report/make-report")).behind(this.needReport(), finding, figure, from);
  }

  async numbers(): Promise<Uint8Array<ArrayBuffer>> {
    const { report } = this.needReport();
    const { reportJson } = await import("./report/make-report");
    return new TextEncoder().encode(reportJson(report));
  }

  async last({ bytes }: Ask<"last">): Promise<LastRead> {
    return (await loadLast()).readLast(bytes, this.tools.readFile);
  }

  async compare(ask: Ask<"compare">, { onStep }: Steps): Promise<ComparedAnswer> {
    onStep("Reading the records");
    const { found, records } = this.read(ask);
    this.comparison = null;
    if (!records) return { found, compared: null, lost: [] };
    onStep("Following each count");
    const { settings, decisions, bytes } = ask;
    const { readFile } = this.tools;
    const later = { workbook: this.needHeld().workbook, records, settings, decisions, readFile };
    const { compared, lost, kept } = await (await loadLast()).compareWithLast(bytes, ask.earlierAsOf, later);
    this.comparison = kept;
    return { found, compared, lost };
  }

  async again({ bytes, decisions }: Ask<"again">, { onStep }: Steps): Promise<MadeAgain> {
    onStep("Making the report again");
    return (await loadLast()).makeAgain(bytes, this.needHeld().workbook, decisions, this.tools);
  }

  /** A therapist need be chosen only where there are several. */
  async caseload(ask: CaseloadAsk, { onStep }: Steps): Promise<CaseloadBuilt> {
    onStep("Reading the records");
    const { found, records } = this.read(ask);
    const therapist = ask.therapist ?? onlyTherapist(found);
    if (!records || therapist === null) return { found, listed: null };
    onStep("Putting observations in order");
    const context = tableContext(buildCohort(records, ask.settings), ask.settings, records);
    onStep("Putting the children in order");
    const { listCaseload } = await import("./caseload/list-caseload");
    return { found, listed: listCaseload(context, therapist, ask.visits) };
  }

  async page({ settings, decisions, subject, visits }: PageAsk, { onStep }: Steps): Promise<PageMade> {
    onStep("Writing the page");
    this.lastPage = null;
    const asOf = settings.asOf as Day;
    const { workbook } = this.needHeld();
    const { makePage } = await import("../../src/report/pages/make-page");
    const sheet = makePage(workbook, settings, decisions, subject, visits);
    this.lastPage = { asOf, sheets: [sheet] };
    const fileName = `${subject.kind === "child" ? "child-page" : "caseload"}-${isoOf(asOf)}.xlsx`;
    return { subject, label: dayInWords(asOf), fileName };
  }

  async release(ask: ReleaseAsk, { onStep }: Steps): Promise<ReleaseBuilt> {
    onStep("Reading the records");
    const { found, records } = this.read(ask);
    if (!records) return { found, outcome: null };
    const releases = await this.loaded();
    return { found, outcome: await releases.prepare(ask, this.needHeld().workbook, records, onStep) };
  }

  async releaseTries(ask: ReleaseAsk, { onStep }: Steps): Promise<ReleaseTried> {
    onStep("Reading the records");
    const { found, records } = this.read(ask);
    if (!records) return { found, ways: null };
    return { found, ways: await (await this.loaded()).tries(ask, records, onStep) };
  }

  async prose({ text }: Ask<"prose">, { onStep }: Steps): Promise<ProseChecked> {
    return (await this.loaded()).prose(text, this.needHeld().workbook, onStep);
  }

  async releaseFile({ format }: Ask<"releaseFile">): Promise<Uint8Array<ArrayBuffer>> {
    const releases = await this.loaded();
    return format === "ledger" ? releases.ledgerFile() : releases.file(format);
  }

  async ledger({ text }: Ask<"ledger">): Promise<LedgerRead> {
    return (await this.loaded()).ledger(text);
  }

  async releaseRows({ table, from }: Ask<"releaseRows">): Promise<readonly PreviewRow[]> {
    return (await this.loaded()).rows(table, from);
  }

  async releaseSentences({ table, from }: Ask<"releaseSentences">): Promise<readonly string[]> {
    return (await this.loaded()).sentences(table, from);
  }

  sheets({ of }: Ask<"sheets">, { onRows }: Pick<WorkEvents, "onRows">): readonly SheetHead[] {
    const { sheets } = this.needMade(of);
    for (const part of partsOf(sheets)) onRows(part);
    return sheets.map(headOf);
  }

  giveBack(): Answer<"giveBack"> {
    const columns = this.needHeld().columns();
    this.held = null;
    return columns;
  }

  file({ of }: Ask<"file">): Promise<Uint8Array<ArrayBuffer>> {
    const { sheets, asOf } = this.needMade(of);
    return this.tools.writeFile(sheets, asOf);
  }

  async template(): Promise<Uint8Array<ArrayBuffer>> {
    const { templateSheets } = await import("../../src/report/template/template-sheets");
    return this.tools.writeFile(templateSheets(), TEMPLATE_DAY);
  }

  chart({ of, chart, width }: Ask<"chart">): Promise<string> {
    const wanted = (of === "report" ? this.needReport() : this.comparison)?.charts[chart];
    if (!wanted) throw new RangeError("chart: there is no such chart");
    return this.tools.drawChart(wanted, width);
  }

  private async lost(last: Uint8Array, ask: Ask<"check">, records: Records): Promise<readonly string[]> {
    return (await loadLast()).lostSince(last, {
      ...ask,
      records,
      workbook: this.needHeld().workbook,
      readFile: this.tools.readFile,
    });
  }

  private loaded(): Promise<Releases> {
    this.loading ??= this.tools.loadReleases().catch((error: unknown) => {
      this.loading = null;
      throw error;
    });
    return this.loading;
  }

  private needHeld(): Held {
    if (!this.held) throw new RangeError("work: no workbook was handed over");
    return this.held;
  }

  private read({ settings, decisions }: Ask<"check">): ReadFound {
    const read = readFound(this.needHeld().workbook, settings, decisions);
    this.groups = read.groups;
    return read;
  }

  private needReport(): KeptReport {
    if (!this.report) throw new RangeError("work: no report was made");
    return this.report;
  }

  private needMade(kind: MadeKind): KeptSheets {
    const made = { report: this.report, page: this.lastPage, comparison: this.comparison }[kind];
    if (!made) throw new RangeError(`work: no ${kind} was made`);
    return made;
  }
}

const loadLast = () => import("./last/last-quarter");

/** A template bears no date of its own: the same bytes each time. */
const TEMPLATE_DAY = dayFromIso("2026-01-01") as Day;

/** The one whose children are listed where nobody chose; null where somebody must. */
function onlyTherapist({ therapists }: RecordsFound): string | null {
  if (therapists === null) return "";
  return therapists.length > 1 ? null : (therapists[0] ?? "");
}
