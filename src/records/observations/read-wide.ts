import { CELL, type Grid } from "../../workbook/cells";
import type { Block, Tally, WideColumn } from "../headings/block";
import { dateRule, isDay } from "../cells/date-codes";
import { ID_CODE } from "../cells/ids";
import { wideKey } from "../corrections/in-force";
import { childrenOf, idRule, type Lookups } from "./read-observations";
import { type Reading, readDates } from "../rows/reading";
import { NO_DAY, RESULT } from "../records";
import { readResultColumn, RESULT_CODE, type ResultWords } from "../cells/result-words";
import type { Staged } from "./staged";

/** What a wide sheet's rows share: the child and, where there is one, the day of the visit. */
interface WideRows {
  readonly block: Block;
  readonly tally: Tally;
  readonly child: Int32Array;
  readonly visit: Int32Array | null;
  readonly source: number;
}

const CELL_FORM = { expected: "a date, or one of met, emerging, not met and lost" };

/** Filled skill cells of a wide sheet: each counts as one row. */
export function wideCells(block: Block): number {
  return block.wide.reduce(
    (sum, wide) => sum + block.rows.reduce((n, row) => n + (isFilled(block, row, wide) ? 1 : 0), 0),
    0,
  );
}

/** Reads a wide sheet: a row a child (or a child and visit), a column a skill, cells with a date or a result. */
export function readWide(reading: Reading, block: Block, tally: Tally, lookups: Lookups, staged: Staged): void {
  const date = block.columns.get("date");
  const rows: WideRows = {
    block,
    tally,
    child: childrenOf(block, lookups.child),
    visit: visitDays(reading, block, date),
    source: staged.sources.push({ block, tally }) - 1,
  };
  const refused = listBadChildren(reading, rows);
  for (const wide of block.wide) readSkillColumn(reading, rows, wide, refused, lookups.words, staged);
}

/** The day of each row: from the column of days, or the one day that the person gave for the whole sheet. */
function visitDays(reading: Reading, block: Block, date: number | undefined): Int32Array | null {
  if (date !== undefined) return readDates(reading, block, "date", date, { strict: true }).days;
  return block.day === null ? null : new Int32Array(block.rows.length).fill(block.day);
}

/** By string of a grid: 1 where it is a word for a result, and so no date. One list serves all columns of the sheet. */
function wordsOfGrid(grid: Grid, words: ResultWords): Uint8Array {
  const known = WORDS_OF_GRID.get(grid);
  if (known?.words === words) return known.isWord;
  const isWord = Uint8Array.from(grid.strings, (text) => (words.codeOfText(text) === RESULT_CODE.unknown ? 0 : 1));
  WORDS_OF_GRID.set(grid, { words, isWord });
  return isWord;
}

const WORDS_OF_GRID = new WeakMap<Grid, { readonly words: ResultWords; readonly isWord: Uint8Array }>();

function listBadChildren(reading: Reading, { block, child }: WideRows): Uint8Array {
  const refused = new Uint8Array(block.rows.length);
  block.rows.forEach((row, i) => {
    if ((child[i] as number) >= 0 || !block.wide.some((wide) => isFilled(block, row, wide))) return;
    refused[i] = 1;
    reading.findings.cell(
      idRule("child", child[i] as number),
      block,
      row,
      block.columns.get("child") ?? block.range.left,
    );
  });
  return refused;
}

function readSkillColumn(
  reading: Reading,
  rows: WideRows,
  wide: WideColumn,
  refused: Uint8Array,
  words: ResultWords,
  staged: Staged,
): void {
  const { block, tally, child } = rows;
  const results = readResultColumn(block.grid, wide.column, block.rows, words);
  const passOver = wordsOfGrid(block.grid, words);
  const dates = readDates(reading, block, wideKey(wide.heading), wide.column, { strict: true, passOver });
  const visit =
    wide.days === undefined
      ? rows.visit
      : readDates(reading, block, wideKey(`${wide.heading} days`), wide.days, { strict: true }).days;
  staged.reserve(block.rows.length);
  block.rows.forEach((row, i) => {
    if (!isFilled(block, row, wide)) return;
    if (refused[i] === 1) return tally.leave(idRule("child", child[i] as number));
    const read = results[i] as number;
    if (read === RESULT_CODE.leftOut) return tally.leave("result-left-out");
    const result = read === RESULT_CODE.blank ? (words.ofBlank() ?? read) : read;
    const isWord = result < RESULT_CODE.blank;
    const day = isWord ? (visit?.[i] ?? NO_DAY) : (dates.days[i] as number);
    const rule = wide.skill < 0 ? idRule("skill", wide.skill) : cellRule(isWord, day, visit !== null);
    if (rule !== null) return leaveCell(reading, rows, wide, i, rule, isWord);
    stage(staged, rows, wide, i, isWord ? result : RESULT.met, day, !isWord && reading.settings.metDates === "exact");
  });
}

/** Why a filled cell cannot be used, or null. */
function cellRule(isWord: boolean, day: number, hasVisitDates: boolean): string | null {
  if (isDay(day)) return null;
  if (isWord && !hasVisitDates) return "result-needs-date";
  const rule = dateRule(day);
  return !isWord && rule === "date-unreadable" ? "result-unknown" : rule;
}

function leaveCell(
  reading: Reading,
  { block, tally }: WideRows,
  wide: WideColumn,
  i: number,
  rule: string,
  isWord: boolean,
): void {
  tally.leave(rule);
  if (rule === "date-column-swapped") return;
  const visitDate = isWord && rule.startsWith("date-") ? (wide.days ?? block.columns.get("date")) : undefined;
  reading.findings.cell(
    rule,
    block,
    block.rows[i] as number,
    visitDate ?? wide.column,
    rule === "result-unknown" ? CELL_FORM : {},
  );
}

function stage(
  staged: Staged,
  rows: WideRows,
  wide: WideColumn,
  i: number,
  result: number,
  day: number,
  exact: boolean,
): void {
  const n = staged.length;
  staged.child[n] = rows.child[i] as number;
  staged.skill[n] = wide.skill;
  staged.day[n] = day;
  staged.result[n] = result;
  staged.exact[n] = exact ? 1 : 0;
  staged.observer[n] = ID_CODE.blank;
  staged.entered[n] = NO_DAY;
  staged.source[n] = rows.source;
  staged.row[n] = rows.block.rows[i] as number;
  staged.column[n] = wide.column;
  staged.length = n + 1;
}

/** Whether a cell says something: a blank and a 0 only where a person settled what they mean. */
function isFilled(block: Block, row: number, { column, days }: WideColumn): boolean {
  if (!isEmpty(block, row, column)) return true;
  return block.says.blank && !isEmpty(block, row, days ?? block.columns.get("date") ?? -1);
}

function isEmpty(block: Block, row: number, column: number): boolean {
  const cells = block.grid.columns[column];
  const kind = cells?.kinds[row] ?? CELL.empty;
  if (kind === CELL.empty) return true;
  const value = cells?.values[row] as number;
  if (kind === CELL.text) return (block.grid.strings[value] as string).trim() === "";
  return kind === CELL.number && value === 0 && !block.says.zero;
}
