import { isoOf } from "../../age/day";
import { buildCohort } from "../../cohort/cohort";
import type { Decision } from "../../records/corrections/decisions";
import { readRecords } from "../../records/read-records";
import type { Records, Skill } from "../../records/records";
import { echoSettings, type Settings, settingsThatBearOn } from "../../settings/settings";
import { tableContext } from "../../tables/context";
import { unknownColumn } from "../../tables/groups";
import type { Changes } from "../../tables/what-changed/changed-cell";
import { changesBetween, type Side } from "../../tables/what-changed/changes";
import { dayInWords } from "../../words/dates";
import type { WorkbookIn } from "../../workbook/workbook";
import type { EarlierReport } from "./earlier-report";

/** The earlier workbook, read on its day under its settings. */
export interface EarlierBook {
  readonly records: Records;
  readonly settings: Settings;
}

/** The later workbook as it was read, and what it takes to read it as on the earlier day. */
export interface LaterBook extends EarlierBook {
  readonly workbook: WorkbookIn;
  readonly decisions: readonly Decision[];
}

/**
 * What changed between two runs, or why that cannot be told.
 *
 * @param withChildren - lists the children behind each part: internal
 * @throws {RecordsUnusable} when the later workbook cannot be read under the earlier settings
 */
export function compareRuns(
  earlier: EarlierBook | EarlierReport,
  later: LaterBook,
  withChildren = false,
): { readonly changes: Changes } | { readonly reason: string } {
  const reason = reasonAgainst(earlier, later);
  if (reason !== null) return { reason };
  const isReport = "counts" in earlier;
  const asOf = earlier.settings.asOf as number;
  const under = recordsUnder(earlier.settings, isReport ? null : earlier.records.skills, later);
  const unknown = unknownColumn(under.enrolments.columns, earlier.settings.by);
  if (unknown !== null)
    return { reason: `The earlier figures are grouped otherwise than the later workbook can be. ${unknown}` };
  return {
    changes: changesBetween({
      earlier: isReport ? earlier.counts : sideOf(earlier.records, earlier.settings, asOf),
      laterUnderEarlier: sideOf(under, earlier.settings, asOf),
      laterThen: sideOf(later.records, later.settings, asOf),
      later: sideOf(later.records, later.settings, later.settings.asOf as number),
      withChildren,
    }),
  };
}

function reasonAgainst(earlier: EarlierBook | EarlierReport, later: LaterBook): string | null {
  const [before, now] = [earlier.settings.asOf, later.settings.asOf];
  if (before === null || now === null) return "Both runs need the day that their figures are for.";
  if (now < before) {
    return `The later figures are for ${dayInWords(now)}, and the earlier ones for ${dayInWords(before)}: name the earlier workbook or report first. (--as-of ${isoOf(before)} or later.)`;
  }
  const columns = "records" in earlier ? unknownColumn(earlier.records.enrolments.columns, earlier.settings.by) : null;
  return columns ?? unknownColumn(later.records.enrolments.columns, later.settings.by);
}

/** The later workbook as the earlier settings and skills read it; what is dated later is in it, and counts on no earlier day. */
function recordsUnder(settings: Settings, skills: readonly Skill[] | null, later: LaterBook): Records {
  const asRead = { ...settings, asOf: later.settings.asOf };
  const isSame = sameReading(asRead, later.settings) && (skills === null || sameSkills(skills, later.records.skills));
  return isSame ? later.records : readRecords(later.workbook, asRead, later.decisions, skills);
}

function sameReading(a: Settings, b: Settings): boolean {
  const [before, now] = [echoSettings(a), echoSettings(b)];
  return settingsThatBearOn("reading", "entry").every((name) => before[name] === now[name]);
}

function sameSkills(a: readonly Skill[], b: readonly Skill[]): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function sideOf(records: Records, settings: Settings, asOf: number): Side {
  const from = Math.min(settings.from ?? asOf, asOf);
  return {
    context: tableContext(buildCohort(records, settings), { ...settings, asOf, from }),
    children: records.children,
  };
}
