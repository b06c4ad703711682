import type { Highs } from "highs";
import type { ReleasedTable } from "../../../src/release/release-table";
import { reportOf } from "../../support/report-of";
import { parseSettings, type Settings } from "../../../src/settings/settings";
import { isReleasable } from "../../../src/tables/catalogue";
import type { ReleasableId, Table } from "../../../src/tables/table";
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
  readonly tables: readonly ReleasableId[];
  readonly printed: readonly ReleasedTable[];
}

export interface AuditHow {
  readonly minimum: number;
  readonly highs: Highs;
  /** Families behind a count of so many children; every child one of its own when left out. */
  readonly contributorsOf?: (count: number) => number;
  /** Printed counts lie less than this from the truth; 1: they are true. */
  readonly base?: number;
  /** None and all of a group must not be proved either. */
  readonly wholeGroups?: boolean;
}

/** Judges releases from what they print and from the definitions alone, as somebody would who was given them all. */
export function audit(program: RandomProgram, releases: readonly Release[], how: AuditHow): Audit {
  const { highs, base = 1 } = how;
  const all = releases.map((release) => printedOf(release, release.printed));
  const { counts: truth } = readAll(program, allTruths(workbookOf(program), releases), { truth: null, base: 1 });
  truth.fill();
  const trueCount = (name: string) => {
    const value = truth.value(name);
    if (value === null) throw new Error(`the true count of ${name} cannot be worked out`);
    return value;
  };
  const { counts, secrets } = readAll(program, all, { truth: base === 1 ? trueCount : null, base });
  const spans = spansOf(secrets, trueCount, how);
  counts.fill();
  return { small: spans.size, leaks: counts.provedInside(spans, highs) };
}

function spansOf(
  secrets: ReadonlySet<string>,
  trueCount: (name: string) => number,
  { minimum, contributorsOf = (count) => count, wholeGroups = false }: AuditHow,
): Map<string, Inside> {
  const spans = new Map<string, Inside>();
  for (const name of secrets) {
    const count = trueCount(name);
    const contributors = contributorsOf(count);
    if (contributors >= 1 && contributors < minimum) {
      spans.set(name, { low: 1, high: minimum - 1 + (count - contributors) });
    } else if (wholeGroups && count === 0 && isOfGroup(name)) spans.set(name, { low: 0, high: 0 });
  }
  return spans;
  /** Met, or assessed less met, of a row of met-by-band in which somebody was assessed. */
  function isOfGroup(name: string): boolean {
    const row = /^(followed\|.*)\|(met|without)$/.exec(name)?.[1];
    return row !== undefined && !row.endsWith("all ages") && trueCount(`${row}|assessed`) > 0;
  }
}

function readAll(program: RandomProgram, all: readonly Printed[], how: Pick<Reading, "truth" | "base">) {
  const secrets = new Set<string>();
  const counts = new Counts();
  const reading: Reading = { counts, skills: program.skills, all, onSecret: (name) => secrets.add(name), ...how };
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
    const report = reportOf(workbook, settingsOf(entries), tables);
    const released = report.tables.filter((table): table is Table<ReleasableId> => isReleasable(table.id));
    return [printedOf({ entries, tables, printed: [] }, released)];
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
