import { loadSolver } from "../hosts/file/load-solver";
import type { Records } from "../records/records";
import { answerQuestion } from "../release/answers/answer";
import { type QuestionId, QUESTIONS } from "../release/answers/questions";
import { appendEntry, type Ledger, ledgerText } from "../release/ledger";
import type { PreparedRelease, Refusal } from "../release/prepared";
import { footnoteOf } from "../release/words/footnotes";
import { prepareRelease } from "../report/prepare-release";
import { contextOf, rulesOf } from "../report/release/release-rules";
import { withoutLedger } from "../report/release/without-ledger";
import type { Settings } from "../settings/settings";
import { canBeMade, TABLE_CATALOGUE } from "../tables/catalogue";
import { unknownColumn } from "../tables/groups";
import type { ReleasableId } from "../tables/table";
import { badRequest, EXIT } from "./failure";
import { openWorkbook, recordsFrom, settledFrom } from "./open";
import { besideFrom, besideLines } from "./release-beside";
import { askedOf, checkLedgerStands, checkPlaces, formatsOf, ledgerFrom, settingsWithDate } from "./release-checks";
import { made, save } from "./release-output";
import { answerLines, type LedgerUse, refusalText, releaseSummary } from "./release-summary";
import type { RequestOf } from "./request";
import { print, progress } from "./say";

/** Everything is made in memory; files are written when all of it succeeded, the ledger last. */
export async function runReleaseCommand(request: RequestOf<"release">): Promise<number> {
  const settled = settledFrom(request);
  const { decisions } = settled;
  const settings = settingsWithDate(request, settled.settings);
  const formats = formatsOf(request);
  const asked = askedOf(request);
  checkPlaces(request, [request.out]);
  const ledger = ledgerFrom(request.ledger);
  const beside = besideFrom(request);
  const workbook = await openWorkbook(request.book);
  const { records, source } = recordsFrom(workbook, settings, decisions);
  checkRecords(typeof asked === "string" ? [QUESTIONS[asked].table] : asked, settings, records);
  checkSkills(request.skills, records);
  const { release, used, lines: answered, answers } = await prepared(request, asked, { records, settings, ledger });
  const context = contextOf(release, used, records, request.skills);
  progress("Writing and scanning");
  const rules = rulesOf(release, used, records);
  const files = await made(release, context, formats, rules);
  const after = appendEntry(ledger, release.entry);
  const lines = besideLines(beside, { release, context, rules, settings: used, records, source, answers });
  if (request.ledger !== null) checkLedgerStands(request.ledger, ledger);
  const written = save(request, files, request.ledger === null ? null : ledgerText(after));
  const use: LedgerUse | null = request.ledger === null ? null : { file: request.ledger, before: ledger, after };
  print([...answered, releaseSummary(release, written, use), ...lines].join("\n"));
  return EXIT.done;
}

function checkSkills(asked: readonly string[] | null, { skills }: Records): void {
  const unknown = asked?.find((id) => !skills.some((skill) => skill.id === id));
  if (unknown === undefined) return;
  throw badRequest(`The Skills table has no skill "${unknown}": give ids from its first column. Nothing was written.`);
}

function checkRecords(tables: readonly ReleasableId[], { by }: Settings, records: Records): void {
  const unknown = unknownColumn(records.enrolments.columns, by);
  if (unknown !== null) throw badRequest(unknown);
  const missing = tables.find((id) => !canBeMade(id, records));
  if (missing === undefined) return;
  throw badRequest(
    `The workbook has no table of ${TABLE_CATALOGUE[missing].needs}, so ${missing} cannot be released: leave it out of --tables. Nothing was written.`,
  );
}

interface Basis {
  readonly records: Records;
  readonly settings: Settings;
  readonly ledger: Ledger;
}

/** A release, the settings that it was made under, and what is said of a question that it answers. */
interface Made {
  readonly release: PreparedRelease;
  readonly used: Settings;
  readonly lines: readonly string[];
  readonly answers: readonly string[];
}

/** Says in a sentence what stopped a release that could not be prepared. */
async function prepared(
  request: RequestOf<"release">,
  asked: readonly ReleasableId[] | QuestionId,
  { records, settings, ledger }: Basis,
): Promise<Made> {
  const solver = await loadSolver();
  const prepare = (tables: readonly ReleasableId[], under: Settings) => {
    const found = prepareRelease(records, { settings: under, tables, ledger, solver, onStep: progress });
    return isRefusal(found) || request.ledger !== null ? found : withoutLedger(found);
  };
  if (typeof asked === "string") return answered(asked, request.skills, { records, settings }, prepare);
  const release = prepare(asked, settings);
  if (isRefusal(release)) throw badRequest(refusalText(release));
  if (release.tables.every(({ rows }) => rows.length === 0)) throw badRequest(NOTHING);
  return { release, used: settings, lines: [], answers: [] };
}

function answered(
  question: QuestionId,
  skills: readonly string[] | null,
  { records, settings }: Omit<Basis, "ledger">,
  prepare: (tables: readonly ReleasableId[], under: Settings) => PreparedRelease | Refusal,
): Made {
  const answer = answerQuestion(question, settings, {
    prepare: (table, under) => prepare([table], under),
    contextOf: (release, under) => contextOf(release, under, records, skills),
    skills,
  });
  if (isRefusal(answer)) throw badRequest(refusalText(answer));
  const context = contextOf(answer.release, answer.settings, records, skills);
  const footnotes = answer.release.tables.map((table) => footnoteOf(table, context));
  const answers = answer.figures.flatMap(({ sentence }) => sentence ?? []);
  return { release: answer.release, used: answer.settings, lines: answerLines(answer, footnotes), answers };
}

const NOTHING = "The tables have no row on that day: choose a later --as-of, or other tables. Nothing was written.";

function isRefusal(found: object): found is Refusal {
  return "places" in found;
}
