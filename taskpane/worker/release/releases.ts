import { strToU8 } from "fflate";
import { isoOf } from "../../../src/age/day";
import { fingerprintOf, sourceOf } from "../../../src/records/fingerprint";
import { readRecords } from "../../../src/records/read-records";
import type { Records } from "../../../src/records/records";
import { answerQuestions, answersIn, showsMore, triedInWords } from "../../../src/release/answers/answer";
import { questionOfTable, QUESTIONS } from "../../../src/release/answers/questions";
import { appendEntry, EMPTY_LEDGER, headOf, type Ledger, ledgerText, parseLedger } from "../../../src/release/ledger";
import type { Solver } from "../../../src/release/linear-model";
import type { PreparedRelease, Refusal } from "../../../src/release/prepared";
import { checkText } from "../../../src/release/text-check/check-text";
import { isoInWords } from "../../../src/release/words/days";
import { ledgerInWords } from "../../../src/release/words/ledger-in-words";
import { saidIn } from "../../../src/release/words/sentences";
import type { WordsContext } from "../../../src/release/words/words-context";
import { prepareRelease } from "../../../src/report/prepare-release";
import { contextOf, type OutputRules, rulesOf } from "../../../src/report/release/release-rules";
import { runReport } from "../../../src/report/run";
import { withoutLedger } from "../../../src/report/release/without-ledger";
import { sheetNameOf } from "../../../src/report/sheets/sheet-plan";
import type { Settings } from "../../../src/settings/settings";
import type { ReleasableId } from "../../../src/tables/table";
import { canBeMade, TABLE_CATALOGUE } from "../../../src/tables/catalogue";
import { unknownColumn } from "../../../src/tables/groups";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { madeOf, type PreviewedTable, previewed, ROWS_A_PART, SENTENCES_A_PART } from "./previewed";
import type {
  LedgerRead,
  PreviewRow,
  ProseChecked,
  ReleaseAsk,
  ReleaseFormat,
  ReleaseOutcome,
  TriedWay,
} from "./released";
import { Refused, reportOrRefuse } from "../refused";

/** What is loaded only once a release is prepared, or saved. */
export interface ReleaseTools {
  readonly loadSolver: () => Promise<Solver>;
  /** One file, scanned. */
  readonly fileOf: (
    release: PreparedRelease,
    context: WordsContext,
    rules: OutputRules,
    format: ReleaseFormat,
  ) => Promise<Uint8Array<ArrayBuffer>>;
}

interface Kept {
  readonly ask: ReleaseAsk;
  readonly release: PreparedRelease;
  readonly context: WordsContext;
  readonly rules: OutputRules;
  readonly ledger: Ledger;
  readonly tables: readonly PreviewedTable[];
  /** Of the records that it was made from. */
  readonly fingerprint: string;
}

type OnStep = (step: string) => void;

/** Prepares releases, and keeps the last one for its files, its rows and the check of a text. */
export class Releases {
  private kept: Kept | null = null;

  constructor(private readonly tools: ReleaseTools) {}

  ledger(text: string): LedgerRead {
    const read = parseLedger(text);
    if ("message" in read) return read;
    const last = read.ledger.entries.at(-1);
    return {
      releases: read.ledger.entries.length,
      lines: ledgerInWords(read.ledger),
      last: last ? isoInWords(last.body.asOf) : null,
      head: headOf(read.ledger),
    };
  }

  async prepare(ask: ReleaseAsk, workbook: WorkbookIn, records: Records, onStep: OnStep): Promise<ReleaseOutcome> {
    this.kept = null;
    refuseUnfit(ask, records);
    const ledger = ledgerOf(ask.ledger);
    const { settings } = ask;
    const release = (await this.preparing(ask, records, onStep))(ask.tables, settings);
    if ("places" in release) return { kind: "refused", refused: release };
    if (release.tables.every(({ rows }) => rows.length === 0)) throw new Refused(NO_ROWS);
    const plain = contextOf(release, settings, records);
    const asked = QUESTIONS.filter(({ id }) => ask.questions.includes(id));
    const context = asked.length === 0 ? plain : { ...plain, answered: answersIn(asked, release, plain) };
    const seen = release.tables.map((table) => previewed(table, context));
    this.kept = {
      ask,
      release,
      context,
      rules: rulesOf(release, settings, records),
      ledger,
      tables: seen,
      fingerprint: fingerprintOf(workbook, records.input),
    };
    return { kind: "made", made: madeOf(release, seen, context, ask.ledger === null ? null : ledger.entries.length) };
  }

  /** Longer periods, fewer age groups and no groups, each tried as a whole release; what is kept stays as it is. */
  async tries(ask: ReleaseAsk, records: Records, onStep: OnStep): Promise<readonly TriedWay[]> {
    refuseUnfit(ask, records);
    const { settings, tables, questions } = ask;
    const prepare = await this.preparing(ask, records, onStep);
    const asked = QUESTIONS.filter(({ id }) => questions.includes(id));
    const answer = answerQuestions(asked.length === 0 ? tables.map(questionOfTable) : asked, settings, {
      prepare: (ids, under) => {
        onStep("Trying another way to show more");
        return prepare(ids, under);
      },
      contextOf: (release, under) => contextOf(release, under, records),
    });
    if ("places" in answer) return [];
    const [first] = answer.tried;
    return answer.tried.map((each) => ({
      text: triedInWords(each, settings.minimumCell),
      showsMore: first !== undefined && showsMore(each, first),
      entries: {
        edges: each.settings.edges.join(","),
        from: each.settings.from === null ? "" : isoOf(each.settings.from),
        by: each.settings.by,
      },
    }));
  }

  private async preparing({ ledger: text }: ReleaseAsk, records: Records, onStep: OnStep) {
    const ledger = ledgerOf(text);
    onStep("Loading the solver");
    const solver = await this.tools.loadSolver();
    return (tables: readonly ReleasableId[], settings: Settings): PreparedRelease | Refusal => {
      const found = prepareRelease(records, { settings, tables, ledger, solver, onStep });
      return "places" in found || text !== null ? found : withoutLedger(found);
    };
  }

  rows(table: number, from: number): readonly PreviewRow[] {
    return this.needKept().tables[table]?.rows.slice(from, from + ROWS_A_PART) ?? [];
  }

  sentences(table: number, from: number): readonly string[] {
    return this.needKept().tables[table]?.sentences.slice(from, from + SENTENCES_A_PART) ?? [];
  }

  file(format: ReleaseFormat): Promise<Uint8Array<ArrayBuffer>> {
    const { release, context, rules } = this.needKept();
    return this.tools.fileOf(release, context, rules, format);
  }

  /** The ledger that was opened, or a new one, with this release as its last. */
  ledgerFile(): Uint8Array<ArrayBuffer> {
    const { ledger, release } = this.needKept();
    return new Uint8Array(strToU8(ledgerText(appendEntry(ledger, release.entry))));
  }

  /** The true tables are made for this alone: what is held back is known nowhere else. */
  prose(text: string, workbook: WorkbookIn, onStep: OnStep): ProseChecked {
    const { release, context, rules, ask, fingerprint } = this.needKept();
    const { settings, decisions, tables } = ask;
    onStep("Reading the records");
    const records = readRecords(workbook, settings, decisions);
    if (fingerprintOf(workbook, records.input) !== fingerprint) throw new Refused(CHANGED);
    const source = sourceOf(workbook, records, decisions);
    const { tables: made } = reportOrRefuse(runReport(records, { settings, tables, source, onStep }));
    onStep("Checking the text against the release");
    const said = saidIn(release, context);
    return { findings: checkText(text, release, { truth: made, skills: context.skills, names: rules.names, said }) };
  }

  private needKept(): Kept {
    if (!this.kept) throw new RangeError("releases: no release was prepared");
    return this.kept;
  }
}

const NO_ROWS = "The tables have no row on that day: choose a later as-of date, or other tables. Nothing was prepared.";
const CHANGED =
  "The records changed after the release was prepared, so the text cannot be held against it. Prepare the release again, then check the text.";

function refuseUnfit({ tables, settings }: ReleaseAsk, records: Records): void {
  const unknown = unknownColumn(records.enrolments.columns, settings.by);
  if (unknown !== null) throw new Refused(unknown);
  const missing = tables.find((id) => !canBeMade(id, records));
  if (missing === undefined) return;
  throw new Refused(
    `The workbook has no table of ${TABLE_CATALOGUE[missing].needs}, so “${sheetNameOf(missing)}” cannot be released: untick it. Nothing was prepared.`,
  );
}

function ledgerOf(text: string | null): Ledger {
  if (text === null) return EMPTY_LEDGER;
  const read = parseLedger(text);
  if ("message" in read) throw new Refused(read.message);
  return read.ledger;
}
