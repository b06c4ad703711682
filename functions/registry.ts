import { age, ageBand, correctedAge, gestationDays } from "./ages";
import { ageWhenMet, attainmentCurve, compareAges } from "./age-when-met";
import { agreement } from "./agreement";
import { adjustP } from "./adjust-p";
import { changed } from "./changed";
import { attainment, skillStatus } from "./child-tables";
import { expectedByNow } from "./expected-by-now";
import { metByBand } from "./met-by-band";
import { protect, provable } from "./protect";
import { progressCategory, summaryStatements } from "./ratings";
import { referrals } from "./referrals";
import { scan } from "./scan";
import { observedExpected, share, shareDifference } from "./shares";
import { windowStatus } from "./window-status";
import { rowsIn, timesRows, type Work, workOfScan, workOfShare } from "./work";

export interface WorksheetFunction {
  readonly fn: (...args: any[]) => any[][];
  /** Names in order; those in brackets may be left out. */
  readonly parameters: readonly string[];
  /** True where the host has to load the solver before it calls: such calls go to the worker whatever their size. */
  readonly needsSolver: boolean;
  readonly work: Work;
}

/** Every function by the name that a cell calls it by, without the namespace. To add one: its file, a line here, its tests. */
export const FUNCTIONS: ReadonlyMap<string, WorksheetFunction> = new Map([
  entry("AGE", age, "birth on [unit]"),
  entry("CORRECTEDAGE", correctedAge, "birth gestation on [unit] [until]"),
  entry("GESTATIONDAYS", gestationDays, "gestation"),
  entry("AGEBAND", ageBand, "months [edges]"),
  entry("WINDOWSTATUS", windowStatus, "months opens closes [metMonths] [notMetMonths]"),
  entry("SKILLSTATUS", skillStatus, "children observations skills asOf [settings]", { work: timesRows(3) }),
  entry("ATTAINMENT", attainment, "children observations skills asOf [settings]"),
  entry("AGEWHENMET", ageWhenMet, "after by [shares] [level] [entry] [seed]", { work: timesRows(20) }),
  entry("ATTAINMENTCURVE", attainmentCurve, "after by [entry]"),
  entry("COMPAREAGES", compareAges, "after by group [entry]"),
  entry("EXPECTEDBYNOW", expectedByNow, "children observations skills asOf [settings]", { work: timesRows(3) }),
  entry("METBYBAND", metByBand, "children observations skills asOf [by] [settings]"),
  entry("CHANGED", changed, "earlier later [edges]"),
  entry("REFERRALS", referrals, "children referrals from to [settings]", { work: timesRows(5) }),
  entry("SHARE", share, "count of [level] [method]", { work: workOfShare }),
  entry("SHAREDIFFERENCE", shareDifference, "count1 of1 count2 of2 [level]"),
  entry("OBSERVEDEXPECTED", observedExpected, "observed expected [level]", { work: timesRows(3) }),
  entry("SCAN", scan, "counts population [maxWidth] [replicates] [seed]", { work: workOfScan }),
  entry("PROGRESSCATEGORY", progressCategory, "entryLevel exitLevel gainedAnySkill [levels] [peerLevel]"),
  entry("SUMMARYSTATEMENTS", summaryStatements, "categories"),
  entry("ADJUSTP", adjustP, "p [method]"),
  entry("AGREEMENT", agreement, "first second"),
  entry("PROTECT", protect, "counts [minimum]", { needsSolver: true }),
  entry("PROVABLE", provable, "counts hidden", { needsSolver: true }),
]);

export const NAMESPACE = "COHORT";

function entry(
  name: string,
  fn: (...args: any[]) => any[][],
  parameters: string,
  { needsSolver = false, work = rowsIn }: { readonly needsSolver?: boolean; readonly work?: Work } = {},
): [string, WorksheetFunction] {
  return [name, { fn, parameters: parameters.split(" "), needsSolver, work }];
}
