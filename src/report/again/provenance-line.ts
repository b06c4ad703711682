import { type SettingName, SETTING_NAMES, usualWritten } from "../../settings/settings";
import type { Provenance, Report } from "../report";

/** What a printed report says of how it was made: enough to make it again from the same workbook. */
export interface MadeFrom extends Omit<Provenance, "settings" | "seed" | "sites" | "earlier"> {
  /** In a REPORT.json alone: the printed line leaves them out. */
  readonly sites: Provenance["sites"];
  readonly settings: Readonly<Record<string, unknown>>;
  readonly tables: readonly string[];
}

/** The first words of the line, by which it is found. */
const BEGINNING = "Made with Windowline: ";

/** One line for the last page: version, fingerprints, tables, and every setting that is not the usual. */
export function provenanceLine({ provenance, tables, print }: Pick<Report, "provenance" | "tables" | "print">): string {
  const { version, fingerprint, files, records, corrections, settings } = provenance;
  const unusual = SETTING_NAMES.filter((name) => !isUsual(name, settings[name]));
  const made: MadeFrom = {
    version,
    fingerprint,
    corrections,
    ...(files === undefined ? {} : { files }),
    records,
    sites: [],
    settings: Object.fromEntries(unusual.map((name) => [name, settings[name]])),
    // what could not be made was asked for too: the pages say so
    tables: [...tables.map(({ id }) => id), ...print.skipped],
  };
  return BEGINNING + JSON.stringify(made);
}

/** Reads the line back; null where a text is no such line. */
export function parseProvenanceLine(text: string): MadeFrom | null {
  if (!text.startsWith(BEGINNING)) return null;
  try {
    return madeFrom(JSON.parse(text.slice(BEGINNING.length)));
  } catch {
    return null;
  }
}

/** The same from a REPORT.json; null where it is none. */
export function madeFromReport(json: unknown): MadeFrom | null {
  const { provenance, tables, tool } = record(json);
  if (record(tool).name !== "Windowline" || !Array.isArray(tables)) return null;
  return madeFrom({ ...record(provenance), tables: tables.map((table) => record(table).id) });
}

function madeFrom(value: unknown): MadeFrom | null {
  const { version, fingerprint, corrections = null, files, records = [], sites = [], settings, tables } = record(value);
  const isWhole =
    typeof version === "string" &&
    typeof fingerprint === "string" &&
    (corrections === null || typeof corrections === "string") &&
    (files === undefined || (Array.isArray(files) && files.every(isFilePrint))) &&
    Array.isArray(records) &&
    records.every(isTablePrint) &&
    Array.isArray(sites) &&
    sites.every(isSitePrint) &&
    typeof settings === "object" &&
    settings !== null &&
    Array.isArray(tables) &&
    tables.every((id) => typeof id === "string");
  const read = { version, fingerprint, corrections, records, sites, settings, tables };
  return isWhole ? ((files === undefined ? read : { ...read, files }) as MadeFrom) : null;
}

function isTablePrint(value: unknown): boolean {
  const { table, rows, fingerprint } = record(value);
  return typeof table === "string" && typeof rows === "number" && typeof fingerprint === "string";
}

function isFilePrint(value: unknown): boolean {
  const { file, rows, fingerprint } = record(value);
  return typeof file === "string" && typeof rows === "number" && typeof fingerprint === "string";
}

function isSitePrint(value: unknown): boolean {
  const { site, children, observations } = record(value);
  return typeof site === "string" && typeof children === "number" && typeof observations === "number";
}

function record(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null ? (value as Readonly<Record<string, unknown>>) : {};
}

function isUsual(name: SettingName, value: unknown): boolean {
  return JSON.stringify(value) === JSON.stringify(usualWritten(name));
}
