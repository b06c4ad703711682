import { tableIdOf } from "../../tables/catalogue";
import type { TableId } from "../../tables/table";
import { plural } from "../../words/numbers";
import { reportJson } from "../json";
import type { Report } from "../report";
import { cellDifferences, differencesInWords } from "./differences";
import { type MadeFrom, madeFromReport, parseProvenanceLine } from "./provenance-line";

/** What the file of a report says of how it was made, and, of a REPORT.json, its tables. */
export interface ReportFile {
  readonly made: MadeFrom;
  /** Null where the file is a workbook, whose tables are laid out to be read. */
  readonly tables: Parameters<typeof cellDifferences>[0] | null;
}

/** Of a REPORT.json; null where the text is none. */
export function reportFileOfText(text: string): ReportFile | null {
  const json = parsed(text);
  const made = madeFromReport(json);
  return made && { made, tables: (json as { tables: ReportFile["tables"] }).tables };
}

/** Of the texts of a workbook, one of which says how it was made; null where none does. */
export function reportFileOfCells(texts: Iterable<string>): ReportFile | null {
  for (const text of texts) {
    const made = parseProvenanceLine(text);
    if (made) return { made, tables: null };
  }
  return null;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** The tables of the report; null where this version does not make one of them. */
export function tablesToMake({ tables }: MadeFrom): readonly TableId[] | null {
  const known = tables.flatMap((id) => tableIdOf(id) ?? []);
  return known.length === tables.length ? known : null;
}

export const NO_SUCH_TABLE =
  "has a table that this version does not make. Make it again with the version that made it.";

/**
 * What differs between a report and the same made again, in lines: records, corrections and version first, then cells.
 *
 * @param changelog - CHANGELOG.md, whole
 */
export function notTheSame(file: ReportFile, report: Report, changelog: string): string[] {
  const { made, tables } = file;
  const reasons = differencesInWords(made, report.provenance);
  const version = made.version === report.provenance.version ? [] : changesSince(changelog, made.version);
  const head = reasons.length === 0 ? [CHANGED_AFTERWARDS] : ["Made again, and not the same.", ...reasons, ...version];
  return [...head, ...(tables === null ? [COMPARE_JSON] : cellLines(tables, report))];
}

const CHANGED_AFTERWARDS =
  "Made again, and not the same, though records, corrections, settings and version are: the file was changed after it was made, or another program saved it.";
const COMPARE_JSON = "Compare the REPORT.json of both days to see which cells differ: make one with report --json.";

function cellLines(tables: NonNullable<ReportFile["tables"]>, report: Report): string[] {
  const now = JSON.parse(reportJson(report)) as { tables: typeof tables };
  const { count, first } = cellDifferences(tables, now.tables);
  const head = count === 0 ? "No cell of a table differs." : `${plural(count, "cell differs", "cells differ")}:`;
  return [head, ...first.map(({ place, earlier, now: today }) => `  ${place}: ${earlier} then, ${today} now`)];
}

/** The lines of the changelog since a version, newest first. */
function changesSince(changelog: string, version: string): string[] {
  const from = changelog.indexOf("\n## ");
  const to = changelog.indexOf(`\n## ${version}\n`);
  return to <= from ? [] : ["What changed since (CHANGELOG.md):", ...changelog.slice(from, to).trim().split("\n")];
}

export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, at) => byte === b[at]);
}
