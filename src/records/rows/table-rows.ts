import type { z } from "zod";
import { CELL, kindAt, numberAt } from "../../workbook/cells";
import type { Block, Tally } from "../headings/block";
import { shownText } from "../cells/cell-text";
import { DATE_CODE, dateRule, isDay } from "../cells/date-codes";
import { NO_DAY } from "../records";
import { type Reading, readDates } from "./reading";
import { ruleOf } from "../findings/rules";
import type { ColumnSpec, TableSpec } from "../tables/spec";
import { type GestationCell } from "../tables/children";
import { headingKey } from "../cells/words";

/** One row of a table that is small enough for a value a row. */
export interface TableRow<T> {
  readonly row: number;
  /** null where the row is left out. */
  readonly value: T | null;
  /** The id in the child column (or skill column of Skills), also of a row that is left out. */
  readonly id: string;
}

/** Why a cell gives no value: the id of a rule. */
class Problem {
  constructor(readonly rule: string) {}
}

type CellReader = (i: number) => unknown;

/** Reads every row of a block through the schema of its table; rows that cannot be used are counted and listed. */
export function readTableRows<T>(
  reading: Reading,
  block: Block,
  spec: TableSpec,
  schema: z.ZodType<T>,
  tally: Tally,
): TableRow<T>[] {
  const readers = spec.columns.map((column) => [column, readerOf(reading, block, column)] as const);
  return Array.from(block.rows, (row, i) => {
    const raw: Record<string, unknown> = {};
    const rules: string[] = [];
    for (const [column, read] of readers) {
      const value = read(i);
      raw[column.key] = value instanceof Problem ? blankOf(column) : value;
      if (value instanceof Problem) rules.push(report(reading, block, row, column, value.rule));
    }
    const id = String(raw[spec.columns[0]?.key ?? ""] ?? "");
    const value = rules.some(leavesOut) ? null : parsed(reading, block, spec, schema, raw, row, rules);
    const left = rules.find(leavesOut);
    if (left !== undefined) tally.leave(left);
    return { row, value, id };
  });
}

/** The blank cell of a column, as the schemas know it. */
function blankOf(column: ColumnSpec): unknown {
  if (column.kind === "gestation" || column.kind === "weeks") return { cell: null, isDate: false };
  return column.kind === "text" ? "" : null;
}

function parsed<T>(
  reading: Reading,
  block: Block,
  spec: TableSpec,
  schema: z.ZodType<T>,
  raw: unknown,
  row: number,
  rules: string[],
): T | null {
  const result = schema.safeParse(raw);
  if (result.success) return result.data;
  for (const issue of result.error.issues) {
    const column = spec.columns.find((each) => each.key === issue.path[0]) as ColumnSpec;
    rules.push(report(reading, block, row, column, issue.message));
  }
  return null;
}

function report(reading: Reading, block: Block, row: number, column: ColumnSpec, rule: string): string {
  if (rule === "date-column-swapped") return rule;
  const at = block.columns.get(column.key) ?? block.range.left;
  reading.findings.cell(
    rule,
    block,
    row,
    at,
    column.form === undefined || rule === "cell-blank" ? {} : { expected: column.form },
  );
  return rule;
}

function leavesOut(rule: string): boolean {
  return ruleOf(rule).severity === "error";
}

function readerOf(reading: Reading, block: Block, column: ColumnSpec): CellReader {
  const at = block.columns.get(column.key);
  const constant = block.constants.get(column.key);
  const above = block.above?.key === column.key ? block.above.byRow : null;
  if (at === undefined && above !== null) return (i) => above.get(block.rows[i] as number) ?? blankOf(column);
  if (at === undefined) return () => constant ?? blankOf(column);
  if (column.kind === "date") return dateReader(reading, block, column, at);
  const read = {
    id: readId,
    text: readText,
    number: readNumber,
    word: readWord,
    gestation: readGestation,
    weeks: readWeeksEarly,
  }[column.kind];
  return (i) => {
    const row = block.rows[i] as number;
    const kind = kindAt(block.grid, row, at);
    if (kind === CELL.error) return unreadable(column, "cell-error");
    if (kind === CELL.noCachedValue) return unreadable(column, "cell-no-value");
    const value = read(block, row, at, column);
    const blank = value === "" || value === null;
    return blank && column.blank !== undefined ? new Problem(column.blank) : value;
  };
}

function unreadable(column: ColumnSpec, rule: string): Problem {
  return new Problem(column.strict ? rule : "cell-not-read");
}

function dateReader(reading: Reading, block: Block, column: ColumnSpec, at: number): CellReader {
  const dates = readDates(reading, block, column.key, at, { strict: column.strict === true });
  return (i) => {
    const day = dates.days[i] as number;
    if (isDay(day)) return day;
    if (day === NO_DAY) return column.blank === undefined ? null : new Problem(column.blank);
    // The column is listed as a whole.
    if (dates.swapped && !column.strict) return null;
    if (day === DATE_CODE.swapped) return column.strict ? new Problem("date-column-swapped") : null;
    return unreadable(column, dateRule(day));
  };
}

function readId(block: Block, row: number, at: number, column: ColumnSpec): unknown {
  if (kindAt(block.grid, row, at) === CELL.date) return unreadable(column, "id-is-date");
  return zeroIsBlank(block, row, at) ? null : shownText(block.grid, row, at) || null;
}

function readText(block: Block, row: number, at: number): unknown {
  return zeroIsBlank(block, row, at) ? "" : shownText(block.grid, row, at);
}

function readNumber(block: Block, row: number, at: number): unknown {
  const kind = kindAt(block.grid, row, at);
  if (kind === CELL.number) return numberAt(block.grid, row, at);
  const text = shownText(block.grid, row, at);
  if (text === "") return null;
  const isNumber = kind === CELL.text && /^[+-]?\d+([.,]\d+)?$/.test(text);
  return isNumber ? Number(text.replace(",", ".")) : new Problem("number-unreadable");
}

function readWord(block: Block, row: number, at: number, column: ColumnSpec): unknown {
  const key = zeroIsBlank(block, row, at) ? "" : headingKey(shownText(block.grid, row, at));
  if (key === "") return null;
  const word = Object.entries(column.words ?? {}).find(([each, ways]) =>
    [each, ...ways].some((way) => headingKey(way) === key),
  );
  return word ? word[0] : new Problem(column.unknownWord ?? "word-unknown");
}

/** Zero weeks early is a birth on the due date, and not a blank as a gestation of 0 is. */
function readWeeksEarly(block: Block, row: number, at: number): GestationCell {
  const isZero = zeroIsBlank(block, row, at);
  return isZero ? { cell: 0, isDate: false } : readGestation(block, row, at);
}

function readGestation(block: Block, row: number, at: number): GestationCell {
  const kind = kindAt(block.grid, row, at);
  const number = kind === CELL.number ? numberAt(block.grid, row, at) || null : null;
  if (kind === CELL.number) return { cell: number, isDate: false };
  return { cell: shownText(block.grid, row, at) || null, isDate: kind === CELL.date };
}

function zeroIsBlank(block: Block, row: number, at: number): boolean {
  return kindAt(block.grid, row, at) === CELL.number && numberAt(block.grid, row, at) === 0;
}
