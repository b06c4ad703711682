import { buildCohort } from "../../src/cohort/cohort";
import type { Finding } from "../../src/records/findings/finding";
import { workbookOfRanges } from "../../src/records/ranges";
import { readRecords, RecordsUnusable } from "../../src/records/read-records";
import type { Records } from "../../src/records/records";
import type { Settings } from "../../src/settings/settings";
import { type TableContext, tableContext } from "../../src/tables/context";
import { currentDateSystem } from "../date-system";
import { type CellFailure, invalid } from "../failure";
import { rangeOf } from "./cells";

export interface TableArguments {
  readonly children: unknown;
  readonly observations: unknown;
  readonly skills: unknown;
  readonly referrals?: unknown;
}

/** What every table is made from, read from the ranges of a table function. One bad row makes it an error. */
export function contextOf(
  { children, observations, skills, referrals }: TableArguments,
  settings: Settings,
): TableContext {
  const ranges = {
    children: rangeOf(children, "children"),
    observations: rangeOf(observations, "observations"),
    skills: rangeOf(skills, "skills"),
    ...(referrals === undefined ? {} : { referrals: rangeOf(referrals, "referrals") }),
  };
  const records = recordsOf(() => readRecords(workbookOfRanges(ranges, currentDateSystem()), settings));
  return tableContext(buildCohort(records, settings), settings, records);
}

function recordsOf(read: () => Records): Records {
  try {
    const records = read();
    const failure = failureOf(records.findings);
    if (failure) throw failure;
    return records;
  } catch (thrown) {
    if (thrown instanceof RecordsUnusable) throw failureOf(thrown.findings) ?? invalid(thrown.message);
    throw thrown;
  }
}

/**
 * Rules by which a row is left out and is not bad: it is no record, or a later report's, or stands for another row that
 * is, whose own finding says more.
 */
const ORDINARY: ReadonlySet<string> = new Set([
  "total-row",
  "exact-copy",
  "date-after-as-of",
  "entered-after-cut-off",
  "child-left-out",
  "skill-left-out",
]);

function failureOf(findings: readonly Finding[]): CellFailure | null {
  const bad = findings.filter(({ severity, rule }) => severity === "error" && !ORDINARY.has(rule));
  const [first] = bad;
  if (!first) return null;
  const others = bad.length === 1 ? "" : ` (and ${bad.length - 1} more)`;
  return invalid(`${placeOf(first)}: expected ${first.expected}. ${first.advice}${others}`);
}

/** `Observations row 12, column C`: the row within the range given, its header being row 1. */
function placeOf({ table, cell }: Finding): string {
  const [first, last] = cell.split(":").map((each) => /^([A-Z]+)(\d+)$/.exec(each));
  if (!first) return table;
  const rows = last && last[2] !== first[2] ? `rows ${first[2]} to ${last[2]}` : `row ${first[2]}`;
  return `${table} ${rows}, column ${first[1]}`;
}
