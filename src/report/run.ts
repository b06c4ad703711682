import { DAYS_PER_MEAN_MONTH } from "../age/months";
import { buildCohort } from "../cohort/cohort";
import { NOT_FOLLOWED } from "../cohort/following";
import type { Source } from "../records/fingerprint";
import type { Records } from "../records/records";
import { RULES } from "../records/findings/rules";
import { echoSettings, type Settings } from "../settings/settings";
import { rowsAndGroups } from "../tables/age-when-met";
import { canBeMade, TABLE_CATALOGUE, TABLE_IDS, TABLES_OF_ONE_RUN } from "../tables/catalogue";
import { tableContext } from "../tables/context";
import { AgeEstimates } from "../tables/estimates";
import { unknownColumn } from "../tables/groups";
import { mostLikelyMonths } from "../tables/referral-scan-months";
import type { Table, TableId } from "../tables/table";
import type { Changes } from "../tables/what-changed/changed-cell";
import { trendOverview } from "../tables/trend-overview";
import { bridgesOf } from "./changed/bridges";
import { countedSentences, lookSentences } from "./counted";
import { type AgeCurve, type PrintMatter, type Report, TOOL_NAME } from "./report";
import { VERSION } from "./version";

/** What a report is asked for. */
export interface ReportAsk {
  readonly settings: Settings;
  /** Null: all that are not internal. */
  readonly tables: readonly TableId[] | null;
  /** What the records were read from. */
  readonly source: Source;
  /** What changed since an earlier run, where one was given. */
  readonly changes?: Changes;
  /** Told what is being done, before it is done. */
  readonly onStep?: (step: string) => void;
}

/** A report, or why none can be made, in a sentence that says what to do. */
export type ReportRun = { readonly report: Report } | { readonly reason: string };

/** The whole run: records to a cohort, the cohort to tables. */
export function runReport(records: Records, ask: ReportAsk): ReportRun {
  const { settings, onStep: step = () => undefined } = ask;
  const unknown = unknownColumn(records.enrolments.columns, settings.by);
  if (unknown !== null) return { reason: unknown };
  step("Putting observations in order");
  const all = { ...records, changes: ask.changes ?? null };
  const estimates = new AgeEstimates(tableContext(buildCohort(records, settings), settings, all));
  if (isTooEarly(estimates, records)) return { reason: TOO_EARLY };
  const usual = ask.changes ? TABLE_IDS : TABLES_OF_ONE_RUN;
  const wanted = ask.tables ?? usual.filter((id) => !TABLE_CATALOGUE[id].internal);
  const [possible, skipped] = partition(
    TABLE_IDS.filter((id) => wanted.includes(id)),
    (id) => canBeMade(id, all),
  );
  const tables = possible.map((id) => {
    step(`Making ${id}`);
    return TABLE_CATALOGUE[id].make(estimates);
  });
  return { report: reportOf(estimates, records, ask.source, tables, skipped) };
}

const TOO_EARLY =
  "The as-of date comes before the first record: no child was in the program by then. Choose a later date.";

function isTooEarly({ context: { cohort, asOf } }: AgeEstimates, { observations, input }: Records): boolean {
  const nobodyYet = cohort.ids.every((_, child) => cohort.following.firstDayUpTo(child, asOf) === null);
  const laterRows = input.some(({ leftOut }) => (leftOut[reasonOf("date-after-as-of")] ?? 0) > 0);
  return nobodyYet && observations.day.length === 0 && laterRows;
}

function reportOf(
  estimates: AgeEstimates,
  records: Records,
  source: Source,
  tables: readonly Table[],
  skipped: readonly TableId[],
): Report {
  const { settings } = estimates.context;
  const echo = echoSettings(settings);
  return {
    tool: { name: TOOL_NAME, version: VERSION },
    settings: echo,
    input: records.input,
    findings: records.findings,
    tables,
    provenance: { ...source, settings: echo, version: VERSION, seed: settings.seed },
    print: printMatter(estimates, records, tables, skipped),
  };
}

function partition<T>(all: readonly T[], is: (each: T) => boolean): [T[], T[]] {
  return [all.filter(is), all.filter((each) => !is(each))];
}

function skippedSentence(id: TableId): string {
  const { needs } = TABLE_CATALOGUE[id];
  if (needs === "changes") return `No earlier workbook or report was given: ${id} was not made.`;
  return `The workbook has no table of ${needs}: ${id} was not made.`;
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
    bridges: context.records.changes ? bridgesOf(context.records.changes) : [],
    trend: made("trend") ? trendOverview(context) : null,
    skipped,
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
