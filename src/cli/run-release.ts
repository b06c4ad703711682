import { loadSolver } from "../hosts/file/load-solver";
import type { Records } from "../records/records";
import { type Answer, answerQuestions, type AnswerTools } from "../release/answers/answer";
import { questionOfTable } from "../release/answers/questions";
import { appendEntry, EMPTY_LEDGER, type Ledger, ledgerText } from "../release/ledger";
import type { PreparedRelease, Refusal } from "../release/prepared";
import { notCoveredWithin } from "../release/ties/not-covered";
import type { WordsContext } from "../release/words/words-context";
import { prepareRelease } from "../report/prepare-release";
import { answerPassages } from "../report/release/answer-passages";
import { contextOf, rulesOf } from "../report/release/release-rules";
import { withoutLedger } from "../report/release/without-ledger";
import type { Settings } from "../settings/settings";
import { canBeMade, RELEASABLE_IDS, TABLE_CATALOGUE } from "../tables/catalogue";
import { unknownColumn } from "../tables/groups";
import type { ReleasableId } from "../tables/table";
import { badRequest, EXIT } from "./failure";
import { openBooks } from "./books";
import { recordsFrom, settledFrom } from "./open";
import { besideFrom, besideLines } from "./release-beside";
import { askedOf, checkLedgerStands, checkPlaces, formatsOf, ledgerFrom, settingsWithDate } from "./release-checks";
import { planLines, releasedBefore } from "./release-plan";
import { made, save } from "./release-output";
import { answerLines, heldBackLines, type LedgerUse, moreLines, refusalText, releaseSummary } from "./release-summary";
import type { RequestOf } from "./request";
import { complain, print, progress } from "./say";

/** Everything is made in memory; files are written when all of it succeeded, the ledger last. */
export async function runReleaseCommand(request: RequestOf<"release">): Promise<number> {
  const settled = settledFrom(request);
  const { decisions } = settled;
  const settings = settingsWithDate(request, settled.settings);
  const formats = formatsOf(request);
  const asked = askedOf(request);
  checkPlaces(request, [request.out]);
  notCoveredWithin(asked.tables).forEach(complain);
  const ledger = ledgerFrom(request.ledger);
  const beside = besideFrom(request);
  const workbook = await openBooks(request.books);
  const { records, source } = recordsFrom(workbook, settings, decisions);
  checkRecords(asked.tables, settings, records);
  checkSkills(request.skills, records);
  const { release, used, context, before, more } = await prepared(request, asked, { records, settings, ledger });
  if (request.plan) {
    const alone = ledger.entries.length === 0 ? null : await withoutEarlier(release, used, records);
    print(planLines(release, alone, context, ledger).join("\n"));
    return EXIT.done;
  }
  progress("Writing and scanning");
  const rules = rulesOf(release, used, records);
  const files = await made(release, context, formats, rules);
  const after = appendEntry(ledger, release.entry);
  const lines = besideLines(beside, { release, context, rules, settings: used, records, source });
  if (request.ledger !== null) checkLedgerStands(request.ledger, ledger);
  const written = save(request, files, request.ledger === null ? null : ledgerText(after));
  const use: LedgerUse | null = request.ledger === null ? null : { file: request.ledger, before: ledger, after };
  const earlier = request.ledger === null ? [] : releasedBefore(ledger);
  print([...before, releaseSummary(release, written, use, [...more, ...earlier]), ...lines].join("\n"));
  return EXIT.done;
}

/** The same release as if nothing had been released before; null where even that may not leave. */
async function withoutEarlier(
  { entry }: PreparedRelease,
  settings: Settings,
  records: Records,
): Promise<PreparedRelease | null> {
  const tables = RELEASABLE_IDS.filter((id) => entry.tables.includes(id));
  const solver = await loadSolver();
  const found = prepareRelease(records, { settings, tables, ledger: EMPTY_LEDGER, solver, onStep: progress });
  return isRefusal(found) ? null : found;
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

/** A release, the settings and words that it was made under, and what is said before it and of what would show more. */
interface Made {
  readonly release: PreparedRelease;
  readonly used: Settings;
  readonly context: WordsContext;
  readonly before: readonly string[];
  readonly more: readonly string[];
}

type Asked = ReturnType<typeof askedOf>;

/** Says in a sentence what stopped a release that could not be prepared. */
async function prepared(request: RequestOf<"release">, asked: Asked, basis: Basis): Promise<Made> {
  const { records, settings, ledger } = basis;
  const { skills } = request;
  const solver = await loadSolver();
  const prepare: AnswerTools["prepare"] = (tables, under) => {
    const found = prepareRelease(records, { settings: under, tables, ledger, solver, onStep: progress });
    return isRefusal(found) || request.ledger !== null ? found : withoutLedger(found);
  };
  const tools = { prepare, contextOf: wordsOf };
  function wordsOf(release: PreparedRelease, under: Settings): WordsContext {
    return contextOf(release, under, records, skills);
  }
  if (asked.questions.length > 0) return answered(answerQuestions(asked.questions, settings, tools), tools);
  const answer = request.tries ? answerQuestions(asked.tables.map(questionOfTable), settings, tools) : null;
  const release =
    answer === null || isRefusal(answer) || answer.best.options !== ""
      ? prepare(asked.tables, settings)
      : answer.release;
  if (isRefusal(release)) throw badRequest(refusalText(release));
  if (release.tables.every(({ rows }) => rows.length === 0)) throw badRequest(NOTHING);
  const context = wordsOf(release, settings);
  const more =
    answer !== null && !isRefusal(answer)
      ? moreLines(answer, settings.minimumCell)
      : heldBackLines(release.tables, context);
  return { release, used: settings, context, before: [], more };
}

function answered(answer: Answer | Refusal, tools: Pick<AnswerTools, "contextOf">): Made {
  if (isRefusal(answer)) throw badRequest(refusalText(answer));
  const { release, best } = answer;
  const context = { ...tools.contextOf(release, best.settings), answered: answer.answered };
  const before = answerLines(answer, answerPassages(release.tables, context));
  return { release, used: best.settings, context, before, more: [] };
}

const NOTHING = "The tables have no row on that day: choose a later --as-of, or other tables. Nothing was written.";

function isRefusal(found: object): found is Refusal {
  return "places" in found;
}
