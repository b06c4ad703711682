import type { Highs } from "highs";
import type { ReleasedTable } from "../../../src/release/release-table";
import { runReport } from "../../../src/report/run";
import { parseSettings, type Settings } from "../../../src/settings/settings";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { addDays } from "../../oracle/calendar";
import { readBands } from "./bands";
import { Counts, type Inside } from "./counts";
import type { Printed, Reading } from "./outsider";
import { readPopulations } from "./populations";
import { type RandomProgram, workbookOf } from "./random-program";
import { readReached } from "./reached";
import { readReferrals } from "./referred";

/** What was found out about a set of releases of the same records. */
export interface Audit {
  /** Truly small counts that the releases print or give away. */
  readonly small: number;
  /** Those of them that are proved to be small. */
  readonly leaks: readonly string[];
}

export interface Release {
  readonly entries: Record<string, unknown>;
  readonly tables: readonly string[];
  readonly printed: readonly ReleasedTable[];
}

/**
 * Judges releases from what they print and from the definitions alone, as somebody would who was given them all.
 *
 * @param contributorsOf - families behind a count of so many children
 */
export function audit(
  program: RandomProgram,
  releases: readonly Release[],
  minimum: number,
  highs: Highs,
  contributorsOf: (count: number) => number = (count) => count,
): Audit {
  const workbook = workbookOf(program);
  const all = releases.map((release) => printedOf(release, release.printed));
  const { counts: truth, secrets } = readAll(program, allTruths(workbook, releases), null);
  truth.fill();
  const trueCount = (name: string) => {
    const value = truth.value(name);
    if (value === null) throw new Error(`the true count of ${name} cannot be worked out`);
    return value;
  };
  const { counts, secrets: ofReleases } = readAll(program, all, trueCount);
  const spans = new Map<string, Inside>();
  for (const name of ofReleases) {
    const count = secrets.has(name) || truth.has(name) ? trueCount(name) : 0;
    const contributors = contributorsOf(count);
    if (contributors < 1 || contributors >= minimum) continue;
    spans.set(name, { low: 1, high: minimum - 1 + (count - contributors) });
  }
  counts.fill();
  return { small: spans.size, leaks: counts.provedInside(spans, highs) };
}

function readAll(program: RandomProgram, all: readonly Printed[], truth: Reading["truth"]) {
  const secrets = new Set<string>();
  const counts = new Counts();
  const reading: Reading = { counts, skills: program.skills, all, onSecret: (name) => secrets.add(name), truth };
  for (const printed of all) {
    readBands(reading, printed);
    readReached(reading, printed);
    readReferrals(reading, printed);
  }
  readPopulations(reading);
  return { counts, secrets };
}

/** The same tables unprotected; cut at every edge of a release of that day, and over every stretch between two periods. */
function allTruths(workbook: WorkbookIn, releases: readonly Release[]): Printed[] {
  const plain = releases.map(({ entries, tables }) => {
    const alike = releases.filter((other) => other.entries["asOf"] === entries["asOf"]);
    const edges = [...new Set(alike.flatMap((other) => other.entries["edges"] as number[]))].sort((a, b) => a - b);
    return [
      { entries, tables },
      { entries: { ...entries, edges }, tables: tables.filter((id) => id !== "referrals") },
    ];
  });
  return [...plain.flat(), ...stretches(releases)].flatMap(({ entries, tables }) => {
    if (tables.length === 0) return [];
    const report = runReport(workbook, settingsOf(entries), { tables, decisions: [] });
    return [printedOf({ entries, tables, printed: [] }, report.tables)];
  });
}

/** Every stretch of days that the periods of the releases, and their quarters, cut time into. */
function stretches(releases: readonly Release[]): Pick<Release, "entries" | "tables">[] {
  const own = releases.filter(({ tables }) => tables.includes("referrals"));
  const ends = own.flatMap(({ entries }) => [String(entries["from"]), addDays(String(entries["asOf"]), 1)]).sort();
  if (ends.length === 0) return [];
  const [first, last] = [ends[0]!, ends.at(-1)!];
  const quarters = ["01", "04", "07", "10"]
    .map((month) => `2026-${month}-01`)
    .filter((day) => day > first && day < last);
  const edges = [...new Set([...ends, ...quarters])].sort();
  return edges.slice(1).map((end, at) => ({
    entries: { ...own[0]!.entries, from: edges[at], asOf: addDays(end, -1) },
    tables: ["referrals"],
  }));
}

function printedOf({ entries }: Release, tables: readonly ReleasedTable[]): Printed {
  const { by = [], ...rest } = entries as { by?: string[] } & Omit<Printed, "tables" | "by">;
  return { ...rest, by, tables };
}

export function settingsOf(entries: Record<string, unknown>): Settings {
  const parsed = parseSettings(entries, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return parsed.settings;
}
