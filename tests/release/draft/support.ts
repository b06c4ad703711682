import { buildCohort } from "../../../src/cohort/cohort";
import { draftRelease, type DraftRelease } from "../../../src/release/draft/draft-release";
import { type KeyParts, partsOfKey } from "../../../src/release/draft/keys";
import type { DraftTable } from "../../../src/release/release-table";
import type { Cell } from "../../../src/release/system";
import { readRecords } from "../../../src/records/read-records";
import { makeSample } from "../../../src/sample/make-sample";
import { sampleSheets } from "../../../src/sample/sample-sheets";
import { parseSettings } from "../../../src/settings/settings";
import { type TableContext, tableContext } from "../../../src/tables/context";
import { AgeEstimates } from "../../../src/tables/estimates";
import type { TableValue } from "../../../src/tables/table";
import { asWorkbook } from "../../oracle/as-workbook";
import type { OracleInput } from "../../oracle/input";
import { asRead } from "../../sample/as-read";
import { contextFrom, entriesOf } from "../../tables/referrals-book";

export interface SampleDraft extends DraftRelease {
  readonly estimates: AgeEstimates;
  readonly families: readonly string[];
}

/** The invented program, drafted for release. */
export function sampleEstimates(entries: Record<string, unknown> = {}, children = 240, seed = 7) {
  const sample = makeSample({ children, seed });
  const parsed = parseSettings({ asOf: sample.truth.endDate, ...entries }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  const records = readRecords(asRead(sampleSheets(sample)), parsed.settings);
  const cohort = buildCohort(records, parsed.settings);
  return {
    estimates: new AgeEstimates(tableContext(cohort, parsed.settings, records)),
    families: records.children.family,
  };
}

export function sampleDraft(
  tables: readonly string[],
  entries: Record<string, unknown> = {},
  children = 240,
): SampleDraft {
  const { estimates, families } = sampleEstimates(entries, children);
  return { ...draftRelease(estimates, tables, families), estimates, families };
}

/** The rows of a draft with every true count in its place. */
export function trueRows(
  { columns, rows }: DraftTable,
  { system }: Pick<DraftRelease, "system">,
): Record<string, TableValue>[] {
  return rows.map((row) =>
    Object.fromEntries(
      row.map((entry, at) => {
        const value = entry.kind === "count" ? (system.cells[entry.cell]?.count ?? null) : entry.value;
        return [columns[at]?.key ?? "", value];
      }),
    ),
  );
}

/** A random program, drafted: each child its own family unless codes are given. */
export function programDraft(
  input: OracleInput,
  tables: readonly string[],
  {
    entries = {},
    families,
  }: { entries?: Record<string, unknown>; families?: (ids: readonly string[]) => string[] } = {},
): SampleDraft & { readonly context: TableContext } {
  const context = contextFrom(asWorkbook(input), { minimumCell: 5, ...entriesOf(input), ...entries });
  const estimates = new AgeEstimates(context);
  const codes = families?.(context.cohort.ids) ?? context.cohort.ids.map(() => "");
  return { ...draftRelease(estimates, tables, codes), estimates, families: codes, context };
}

/** The cell with a key that begins and ends so. */
export function cellWhere({ system }: Pick<DraftRelease, "system">, parts: Partial<KeyParts>): Cell {
  const found = system.cells.filter(({ key }) => {
    const own = partsOfKey(key);
    return Object.entries(parts).every(([field, value]) => own[field as keyof KeyParts] === value);
  });
  if (found.length !== 1) throw new Error(`${found.length} cells are ${JSON.stringify(parts)}`);
  return found[0] as Cell;
}
