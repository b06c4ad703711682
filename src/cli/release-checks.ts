import { existsSync } from "node:fs";
import { strFromU8 } from "fflate";
import type { ReleaseFormat } from "../hosts/file/release-files";
import { tablesOf as questionTables } from "../release/answers/answer";
import { type Question, QUESTIONS } from "../release/answers/questions";
import { EMPTY_LEDGER, headOf, type Ledger, parseLedger } from "../release/ledger";
import { type Settings, usualSettings } from "../settings/settings";
import { RELEASABLE_IDS } from "../tables/catalogue";
import type { ReleasableId } from "../tables/table";
import { filesOf } from "./books";
import { badRequest } from "./failure";
import { checkOutputs, readBytes } from "./files";
import { settingsFrom, type Settled } from "./open";
import type { RequestOf } from "./request";

type ReleaseRequest = RequestOf<"release">;

export function settingsWithDate(request: ReleaseRequest, settled: Settled["settings"]): Settings {
  const settings = settingsFrom(request.settings, settled);
  checkFloor(settings, settled);
  if (settings.asOf !== null) return settings;
  throw badRequest("A release needs the day its figures are true for: add --as-of, such as --as-of 2026-09-30.");
}

/** The owner of the records sets the floor in a file; the words of one run do not go below it. */
function checkFloor({ floor }: Settings, settled: Settled["settings"]): void {
  const owners = Number(settled["floor"] ?? usualSettings.floor);
  if (!(floor < owners)) return;
  throw badRequest(
    `The floor of this program is ${owners}. The owner of the records can set a lower one: in the understanding file, under "settings": {"floor": ${floor}}, and give that file with --understanding. Nothing was written.`,
  );
}

const FORMATS: readonly ReleaseFormat[] = ["xlsx", "csv", "svg", "png"];

export function formatsOf({ formats }: ReleaseRequest): ReleaseFormat[] {
  const unknown = formats.find((each) => !FORMATS.some((format) => format === each));
  if (unknown !== undefined || formats.length === 0) {
    throw badRequest(
      `There is no format "${unknown ?? ""}". The formats are: ${FORMATS.join(", ")}. Nothing was written.`,
    );
  }
  return FORMATS.filter((format) => formats.includes(format));
}

/** What is asked for: tables, or questions. */
export function askedOf({ tables, answer }: ReleaseRequest): {
  readonly tables: readonly ReleasableId[];
  readonly questions: readonly Question[];
} {
  if (tables !== null) return { tables: tablesOf(tables), questions: [] };
  const asked = answer ?? [];
  const unknown = asked.find((id) => !QUESTIONS.some((each) => each.id === id));
  const questions = QUESTIONS.filter(({ id }) => asked.includes(id));
  if (unknown === undefined && questions.length > 0) return { tables: questionTables(questions), questions };
  const list = QUESTIONS.map(({ id, asks }) => `  ${id}: ${asks}`);
  throw badRequest([`There is no question "${unknown ?? ""}". The questions are:`, ...list].join("\n"));
}

function tablesOf(names: readonly string[]): readonly ReleasableId[] {
  const tables = RELEASABLE_IDS.filter((id) => names.includes(id));
  const unknown = names.find((name) => !tables.some((id) => id === name));
  if (unknown === undefined && names.length > 0) return tables;
  throw badRequest(
    `The table "${unknown ?? ""}" cannot be released. These can: ${RELEASABLE_IDS.join(", ")}. Nothing was written.`,
  );
}

export function checkPlaces(
  { books, understanding, decisions, prose, earlier, ledger }: ReleaseRequest,
  outputs: readonly string[],
): void {
  const inputs = [...filesOf(books), understanding, decisions, prose, earlier].filter((file) => file !== null);
  checkOutputs(inputs, ledger === null ? outputs : [...outputs, ledger]);
}

export function ledgerFrom(file: string | null): Ledger {
  if (file === null || !existsSync(file)) return EMPTY_LEDGER;
  const read = parseLedger(strFromU8(readBytes(file)));
  if ("message" in read) throw badRequest(`${file}: ${read.message}`);
  return read.ledger;
}

/** Two runs at once must not both be protected against the same past, and one of them be forgotten. */
export function checkLedgerStands(file: string, before: Ledger): void {
  if (headOf(ledgerFrom(file)) === headOf(before)) return;
  throw badRequest(`${file} has changed while this release was made: make it again. Nothing was written.`);
}
