import { loadSolver } from "../hosts/file/load-solver";
import type { Records } from "../records/records";
import { appendEntry, type Ledger, ledgerText } from "../release/ledger";
import type { PreparedRelease, Refusal } from "../release/prepared";
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
import { checkLedgerStands, checkPlaces, formatsOf, ledgerFrom, settingsWithDate, tablesOf } from "./release-checks";
import { made, save } from "./release-output";
import { type LedgerUse, refusalText, releaseSummary } from "./release-summary";
import type { RequestOf } from "./request";
import { print, progress } from "./say";

/** Everything is made in memory; files are written when all of it succeeded, the ledger last. */
export async function runReleaseCommand(request: RequestOf<"release">): Promise<number> {
  const settled = settledFrom(request);
  const { decisions } = settled;
  const settings = settingsWithDate(request, settled.settings);
  const formats = formatsOf(request);
  const tables = tablesOf(request);
  checkPlaces(request, [request.out]);
  const ledger = ledgerFrom(request.ledger);
  const beside = besideFrom(request);
  const workbook = await openWorkbook(request.book);
  const { records, source } = recordsFrom(workbook, settings, decisions);
  checkRecords(tables, settings, records);
  checkSkills(request.skills, records);
  const found = await prepared(records, settings, tables, ledger);
  const release = request.ledger === null ? withoutLedger(found) : found;
  const context = contextOf(release, settings, records, request.skills);
  progress("Writing and scanning");
  const rules = rulesOf(release, settings, records);
  const files = await made(release, context, formats, rules);
  const after = appendEntry(ledger, release.entry);
  const lines = besideLines(beside, { release, context, rules, settings, records, source });
  if (request.ledger !== null) checkLedgerStands(request.ledger, ledger);
  const written = save(request, files, request.ledger === null ? null : ledgerText(after));
  const use: LedgerUse | null = request.ledger === null ? null : { file: request.ledger, before: ledger, after };
  print([releaseSummary(release, written, use), ...lines].join("\n"));
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

/** Says in a sentence what stopped a release that could not be prepared. */
async function prepared(
  records: Records,
  settings: Settings,
  tables: readonly ReleasableId[],
  ledger: Ledger,
): Promise<PreparedRelease> {
  const found = prepareRelease(records, { settings, tables, ledger, solver: await loadSolver(), onStep: progress });
  if (isRefusal(found)) throw badRequest(refusalText(found));
  if (found.tables.every(({ rows }) => rows.length === 0)) throw badRequest(NOTHING);
  return found;
}

const NOTHING = "The tables hold no row on that day: choose a later --as-of, or other tables. Nothing was written.";

function isRefusal(found: PreparedRelease | Refusal): found is Refusal {
  return "places" in found;
}
