import type { z } from "zod";
import type { Day } from "../../age/day";
import type { Counted } from "../headings/count-blocks";
import type { Block } from "../headings/block";
import { idRule } from "../observations/read-observations";
import { readTableRows } from "../rows/table-rows";
import type { TableSpec } from "../tables/spec";
import { keyOf } from "../cells/words";
import type { Stays } from "../children/enrolments";
import type { KeyLookup } from "../cells/ids";
import type { Reading } from "../rows/reading";
import type { Children } from "../records";

/** What the tables that follow the children one by one need to know of them. */
export interface ServiceContext {
  readonly reading: Reading;
  readonly child: KeyLookup;
  readonly children: Children;
  readonly stays: Stays;
  /** The area of a text as it is spelled everywhere; null where it is not known. */
  readonly area: (text: string) => string | null;
}

/** A row of Referrals, Signs or Ratings whose child is known, with the means to remark on its cells. */
export interface ServiceRow<T> {
  readonly child: number;
  readonly birth: Day;
  readonly value: T;
  /** Lists a finding at a column of this row. */
  readonly remark: (rule: string, column: string) => void;
}

/** Why a row is left out: a rule, and the column at which it is listed. */
export type Refusal = readonly [rule: string, column: string] | null;

/** The rule of rows that a person chose to leave out: counted, and not listed cell by cell. */
export const LEFT_BY_CHOICE = "area-left-out";

/** Reads the rows of a table that names children; exact copies and rows that `refuse` speaks against are left out. */
export function readServiceRows<T extends { child: string }>(
  context: ServiceContext,
  blocks: readonly Counted[],
  spec: TableSpec,
  schema: z.ZodType<T>,
  refuse: (row: ServiceRow<T>) => Refusal,
): ServiceRow<T>[] {
  const kept: ServiceRow<T>[] = [];
  const seen = new Map<string, Block>();
  for (const { block, tally } of blocks) {
    for (const { row, value } of readTableRows(context.reading, block, spec, schema, tally)) {
      if (value === null) continue;
      const each = serviceRow(context, block, row, value);
      const signature = JSON.stringify({ ...value, child: each.child < 0 ? keyOf(value.child) : each.child });
      const earlier = seen.get(signature);
      const refusal = refusalOf(each, earlier !== undefined, refuse);
      if (!earlier) seen.set(signature, block);
      if (refusal === null) kept.push(each);
      else if (refusal[0] === "exact-copy" && earlier?.file !== block.file) {
        context.reading.findings.copyElsewhere(block);
        tally.leave(refusal[0]);
      } else {
        if (refusal[0] !== LEFT_BY_CHOICE) each.remark(...refusal);
        tally.leave(refusal[0]);
      }
    }
  }
  return kept;
}

/** A later step of a row: null where it is blank, before the first, or not yet taken on the as-of date. */
export function laterStep<T>(
  context: ServiceContext,
  row: ServiceRow<T>,
  first: Day,
  day: Day | null,
  column: string,
): Day | null {
  const { asOf } = context.reading.settings;
  if (day === null) return null;
  if (day < first) row.remark("step-before", column);
  else if (asOf !== null && day > asOf) row.remark("step-after-as-of", column);
  else return day;
  return null;
}

/** Why a row with this date cannot count, whatever else it says. */
export function dateRefusal<T>(context: ServiceContext, row: ServiceRow<T>, day: Day, column: string): Refusal {
  const { asOf } = context.reading.settings;
  if (day < row.birth) return ["date-before-birth", column];
  return asOf !== null && day > asOf ? ["date-after-as-of", column] : null;
}

function serviceRow<T extends { child: string }>(
  context: ServiceContext,
  block: Block,
  row: number,
  value: T,
): ServiceRow<T> {
  const child = context.child(keyOf(value.child), value.child);
  return {
    child,
    birth: context.children.birth[child] ?? 0,
    value,
    remark: (rule, column) =>
      context.reading.findings.cell(rule, block, row, block.columns.get(column) ?? block.range.left),
  };
}

function refusalOf<T>(row: ServiceRow<T>, isCopy: boolean, refuse: (row: ServiceRow<T>) => Refusal): Refusal {
  if (row.child < 0) return [idRule("child", row.child), "child"];
  return isCopy ? ["exact-copy", "child"] : refuse(row);
}
