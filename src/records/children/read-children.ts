import type { Day } from "../../age/day";
import { CELL, kindAt, numberAt, stringAt } from "../../workbook/cells";
import type { Block, Tally } from "../headings/block";
import type { EnrolmentRow } from "./enrolment-row";
import { gestationsOf } from "./gestations";
import { groupColumns } from "./groups";
import { ID_CODE, type KeyLookup } from "../cells/ids";
import type { Reading } from "../rows/reading";
import { type Children, type GroupColumn, NO_DAY } from "../records";
import { readTableRows } from "../rows/table-rows";
import { CHILDREN, childRow } from "../tables/children";
import { keyOf } from "../cells/words";

export interface ChildTable {
  readonly children: Children;
  readonly rows: readonly EnrolmentRow[];
  /** Index into `children` of each row. */
  readonly childOfRow: Int32Array;
  readonly lookup: KeyLookup;
  readonly columns: readonly GroupColumn[];
  readonly gestationNotRecorded: number;
}

type Judge = (rule: string, each: EnrolmentRow, column: string) => void;

/** Reads Children: rows first one by one, then all rows of one child together. */
export function readChildren(reading: Reading, blocks: readonly { block: Block; tally: Tally }[]): ChildTable {
  const seen = new Set<string>();
  const out = new Map<EnrolmentRow, string>();
  const rows: EnrolmentRow[] = [];
  const judge: Judge = (rule, each, column) => leave(reading, out, rule, each, column);
  for (const { block, tally } of blocks) {
    const read = readTableRows(reading, block, CHILDREN, childRow, tally);
    for (const { row, value, id } of read) {
      const key = reading.decided.child(keyOf(id));
      if (key !== "") seen.add(key);
      if (value !== null) rows.push({ block, row, key, value });
    }
  }
  leaveCopies(rows, judge, (each) => leaveElsewhere(reading, out, each));
  leaveConflicts(
    rows.filter((each) => !out.has(each)),
    judge,
    reading,
  );
  leaveSuperseded(
    rows.filter((each) => !out.has(each)),
    judge,
  );
  rows.filter((each) => !out.has(each)).forEach((each) => judgeRow(reading, each, judge));
  for (const { block, tally } of blocks) {
    out.forEach((rule, each) => each.block === block && tally.leave(rule));
  }
  return tableOf(
    reading,
    blocks,
    rows.filter((each) => !out.has(each)),
    seen,
  );
}

function tableOf(
  reading: Reading,
  blocks: readonly { block: Block }[],
  rows: readonly EnrolmentRow[],
  seen: ReadonlySet<string>,
): ChildTable {
  const indexOf = new Map<string, number>();
  const byChild: EnrolmentRow[][] = [];
  const childOfRow = Int32Array.from(rows, (each) => {
    const index = indexOf.get(each.key) ?? byChild.push([]) - 1;
    indexOf.set(each.key, index);
    (byChild[index] as EnrolmentRow[]).push(each);
    return index;
  });
  const gestations = gestationsOf(reading, blocks, byChild);
  return {
    children: {
      ids: byChild.map((own) => (own[0] as EnrolmentRow).value.child),
      birth: Int32Array.from(byChild, (own) => birthOf(own) as Day),
      gestationDays: gestations.days,
      family: byChild.map((own) => own.find((each) => each.value.family !== "")?.value.family ?? ""),
    },
    rows,
    childOfRow,
    lookup: (written) => childLookup(reading, indexOf, seen, written),
    columns: groupColumns(reading, blocks, rows),
    gestationNotRecorded: gestations.notRecorded,
  };
}

function childLookup(
  reading: Reading,
  indexOf: ReadonlyMap<string, number>,
  seen: ReadonlySet<string>,
  written: string,
): number {
  const key = reading.decided.child(written);
  return indexOf.get(key) ?? (seen.has(key) ? ID_CODE.leftOut : ID_CODE.unknown);
}

function leave(
  reading: Reading,
  out: Map<EnrolmentRow, string>,
  rule: string,
  each: EnrolmentRow,
  column: string,
): void {
  reading.findings.cell(rule, each.block, each.row, each.block.columns.get(column) ?? each.block.range.left);
  if (!out.has(each)) out.set(each, rule);
}

function leaveElsewhere(reading: Reading, out: Map<EnrolmentRow, string>, each: EnrolmentRow): void {
  reading.findings.copyElsewhere(each.block);
  out.set(each, "exact-copy");
}

function leaveCopies(rows: readonly EnrolmentRow[], judge: Judge, elsewhere: (each: EnrolmentRow) => void): void {
  const seen = new Map<string, EnrolmentRow>();
  for (const each of rows) {
    const signature = signatureOf(each);
    const earlier = seen.get(signature);
    if (!earlier) seen.set(signature, each);
    else if (earlier.block.file === each.block.file) judge("exact-copy", each, "child");
    else elsewhere(each);
  }
}

/** The same for the same row, whichever file it is in: texts by what they say, not by where their sheet keeps them. */
function signatureOf({ block, row, key, value }: EnrolmentRow): string {
  const site = block.siteFromFile ? "" : value.site;
  const further = block.further.map(({ heading, column }) => [keyOf(heading), cellSignature(block, row, column)]);
  return JSON.stringify([key, { ...value, child: "", site }, further.sort(byHeading)]);
}

function byHeading([a]: readonly unknown[], [b]: readonly unknown[]): number {
  return String(a) < String(b) ? -1 : 1;
}

function cellSignature({ grid }: Block, row: number, column: number): readonly unknown[] {
  const kind = kindAt(grid, row, column);
  if (kind === CELL.empty) return [kind];
  return [kind, kind === CELL.text || kind === CELL.error ? stringAt(grid, row, column) : numberAt(grid, row, column)];
}

/** Birth dates of one child that differ, or that no row gives. */
function leaveConflicts(rows: readonly EnrolmentRow[], judge: Judge, reading: Reading): void {
  const byKey = new Map<string, EnrolmentRow[]>();
  rows.forEach((each) => byKey.set(each.key, [...(byKey.get(each.key) ?? []), each]));
  for (const own of byKey.values()) {
    const births = new Set(own.flatMap((each) => each.value.birth ?? []));
    if (births.size === 0) own.forEach((each) => judge("birth-blank", each, "birth"));
    if (births.size > 1) own.forEach((each) => judge("birth-conflict", each, "birth"));
    if (births.size !== 1) continue;
    for (const each of own) {
      if (each.value.birth !== null) continue;
      reading.findings.cell("birth-other-row", each.block, each.row, each.block.columns.get("birth") as number);
      each.value.birth = birthOf(own);
    }
  }
}

/** Last year's row of an enrollment that has ended since: the row with the day of leaving counts. Two sites are two enrollments. */
function leaveSuperseded(rows: readonly EnrolmentRow[], judge: Judge): void {
  const keyOfRow = ({ key, value }: EnrolmentRow) => JSON.stringify([key, value.enrolled]);
  const ended = new Map<string, Set<string>>();
  for (const each of rows) {
    if (each.value.left === null || each.value.enrolled === null) continue;
    ended.set(keyOfRow(each), (ended.get(keyOfRow(each)) ?? new Set()).add(keyOf(each.value.site)));
  }
  for (const each of rows) {
    if (each.value.left !== null) continue;
    const site = keyOf(each.value.site);
    const sites = ended.get(keyOfRow(each));
    if (sites && (site === "" || sites.has(site) || sites.has(""))) judge("enrolment-superseded", each, "child");
  }
}

/** A program for infants and toddlers follows nobody older; common practice, no source. */
export const OLDEST_DAYS = 3653;

function judgeRow(reading: Reading, each: EnrolmentRow, judge: Judge): void {
  const { birth, enrolled, left } = each.value;
  const { asOf } = reading.settings;
  if (birth === null) return;
  const remark = (rule: string, column: string) =>
    reading.findings.cell(rule, each.block, each.row, each.block.columns.get(column) as number);
  if (asOf !== null && birth > asOf) return judge("date-after-as-of", each, "birth");
  if (left !== null && left < Math.max(birth, enrolled ?? NO_DAY)) return judge("left-before-enrolled", each, "left");
  if (left !== null && left === enrolled) remark("left-on-enrolment", "left");
  if (asOf !== null && enrolled !== null && enrolled > asOf) remark("enrolled-after-as-of", "enrolled");
  else if (asOf !== null && left !== null && left > asOf) remark("enrolled-after-as-of", "left");
  if (enrolled !== null && enrolled - birth > OLDEST_DAYS) remark("age-implausible", "birth");
  if (enrolled !== null && enrolled < birth) {
    remark("enrolled-before-birth", "enrolled");
    each.value.enrolled = birth;
  }
}

function birthOf(own: readonly EnrolmentRow[]): Day | null {
  return own.find((each) => each.value.birth !== null)?.value.birth ?? null;
}
