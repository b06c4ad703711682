/** What changed between two programs, by the program itself: through the reading of both workbooks. */
import { readRecords } from "../../src/records/read-records";
import { compareRuns } from "../../src/report/changed/compare-runs";
import type { Changes } from "../../src/tables/what-changed/changed-cell";
import { PARTS } from "../../src/tables/what-changed/parts";
import { asWorkbook } from "../oracle/as-workbook";
import type { OracleInput } from "../oracle/input";
import type { ChangedRow } from "../oracle/what-changed";
import { settingsFor } from "../support/oracle-settings";

export function changesOf(earlier: OracleInput, later: OracleInput, withChildren = false): Changes {
  const settings = settingsFor(later.settings);
  const workbook = asWorkbook(later);
  const book = { workbook, settings, decisions: [], records: readRecords(workbook, settings) };
  const before = settingsFor(earlier.settings);
  const run = { settings: before, records: readRecords(asWorkbook(earlier), before) };
  const found = compareRuns(run, book, withChildren);
  if ("reason" in found) throw new Error(found.reason);
  return found.changes;
}

/** Under the keys of the second implementation. */
export function changedRows(changes: Changes): ChangedRow[] {
  return changes.cells.map(({ group, skill, area, band, measure, earlier, parts, later }) => ({
    key: [group.map((value) => value ?? "(none)").join(", "), skill, area, band, measure].join(" | "),
    earlier,
    later,
    ...(Object.fromEntries(PARTS.map((part, at) => [part, parts[at]])) as Record<(typeof PARTS)[number], number>),
  }));
}
