import { DAYS_PER_MEAN_MONTH } from "../age/months";
import { buildCohort } from "../cohort/cohort";
import { NOT_FOLLOWED } from "../cohort/following";
import type { Decision } from "../records/corrections/decisions";
import { fingerprintOf } from "../records/fingerprint";
import { readRecords } from "../records/read-records";
import type { Records } from "../records/records";
import { RULES } from "../records/findings/rules";
import { echoSettings, type Settings } from "../settings/settings";
import { rowsAndGroups } from "../tables/age-when-met";
import { canBeMade, TABLE_CATALOGUE, TABLE_IDS } from "../tables/catalogue";
import { tableContext } from "../tables/context";
import { AgeEstimates } from "../tables/estimates";
import { mostLikelyMonths } from "../tables/referral-scan-months";
import type { Table, TableId } from "../tables/table";
import { trendOverview } from "../tables/trend-overview";
import type { WorkbookIn } from "../workbook/workbook";
import { countedSentences, lookSentences } from "./counted";
import { type AgeCurve, type PrintMatter, type Report, TOOL_NAME } from "./report";
import { VERSION } from "./version";

/** The as-of date comes before anything that the workbook records. */
export class NothingByThen extends RangeError {
  constructor() {
    super("The as-of date comes before the first record: no child was followed by then. Choose a later date.");
  }
}

export interface RunOptions {
  /** Table ids; null: all that are not internal. */
  readonly tables: readonly TableId[] | null;
  readonly decisions: readonly Decision[];
  /** Told what is being done, before it is done. */
  readonly onStep?: (step: string) => void;
}

/**
 * The whole run: cells to records, records to a cohort, the cohort to tables.
 *
 * @throws {RecordsUnusable} when a table that is needed is missing, or none of its rows can be used
 * @throws {NothingByThen} when the as-of date comes before the first record
 * @throws {UnknownColumn} when `by` names no column of Children
 */
export function runReport(workbook: WorkbookIn, settings: Settings, options: RunOptions): Report {
  const step = options.onStep ?? (() => undefined);
  step("Reading the records");
  const records = readRecords(workbook, settings, options.decisions);
  step("Putting looks in order");
  const estimates = new AgeEstimates(tableContext(buildCohort(records, settings), settings, records));
  refuseTooEarly(estimates, records);
  const wanted = options.tables ?? TABLE_IDS.filter((id) => !TABLE_CATALOGUE[id].internal);
  const [possible, skipped] = partition(
    TABLE_IDS.filter((id) => wanted.includes(id)),
    (id) => canBeMade(id, records),
  );
  const tables = possible.map((id) => {
    step(`Making ${id}`);
    return TABLE_CATALOGUE[id].make(estimates);
  });
  const echo = echoSettings(settings);
  return {
    tool: { name: TOOL_NAME, version: VERSION },
    settings: echo,
    input: records.input,
    findings: records.findings,
    tables,
    provenance: {
      fingerprint: fingerprintOf(workbook, records.input),
      settings: echo,
      version: VERSION,
      seed: settings.seed,
    },
    print: printMatter(estimates, records, tables, skipped),
  };
}

function refuseTooEarly({ context: { cohort, asOf } }: AgeEstimates, { observations, input }: Records): void {
  const nobodyYet = cohort.ids.every((_, child) => cohort.following.firstDayUpTo(child, asOf) === null);
  const laterRows = input.some(({ leftOut }) => (leftOut[reasonOf("date-after-as-of")] ?? 0) > 0);
  if (nobodyYet && observations.day.length === 0 && laterRows) throw new NothingByThen();
}

function partition<T>(all: readonly T[], is: (each: T) => boolean): [T[], T[]] {
  return [all.filter(is), all.filter((each) => !is(each))];
}

function skippedSentence(id: TableId): string {
  return `The workbook has no table of ${TABLE_CATALOGUE[id].needs}: ${id} was not made.`;
}

function reasonOf(rule: string): string {
  return RULES.find(({ id }) => id === rule)?.reason ?? "";
}

function printMatter(
  estimates: AgeEstimates,
  records: Records,
  tables: readonly Table[],
  skipped: readonly TableId[],
): PrintMatter {
  const { context } = estimates;
  const { cohort, asOf } = context;
  const children = cohort.ids.map((_, child) => child);
  const made = (wanted: TableId) => tables.find(({ id }) => id === wanted);
  const scan = made("referral-scan");
  return {
    skills: cohort.skills,
    curves: made("age-when-met") ? curvesOf(estimates) : [],
    scannedMonths: scan ? mostLikelyMonths(context, scan) : [],
    trend: made("trend") ? trendOverview(context) : null,
    followed: children.filter((child) => cohort.following.enrolmentOn(child, asOf) !== NOT_FOLLOWED).length,
    everFollowed: children.filter((child) => cohort.following.firstDayUpTo(child, asOf) !== null).length,
    decisions: records.decisions,
    counted: [
      ...countedSentences(records),
      ...lookSentences(cohort, estimates.context.settings.edges),
      ...skipped.map(skippedSentence),
    ],
  };
}

function curvesOf(estimates: AgeEstimates): AgeCurve[] {
  const inMonths = (days: number) => days / DAYS_PER_MEAN_MONTH;
  return rowsAndGroups(estimates).flatMap(({ group, skill, values }) => {
    const estimate = estimates.estimateOf(group, skill);
    if (estimate.method === null) return [];
    const steps = estimate.curve.flatMap(({ from, to, shareTo }) =>
      to === null || shareTo === null ? [] : [{ fromMonths: inMonths(from), toMonths: inMonths(to), shareTo }],
    );
    return [{ skill: estimates.context.cohort.skills[skill]!.id, group: values, steps }];
  });
}
