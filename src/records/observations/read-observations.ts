import type { Block, Tally } from "../headings/block";
import { DATE_CODE, dateRule, isDay } from "../cells/date-codes";
import { ID_CODE, type KeyLookup, readIdColumn } from "../cells/ids";
import { type Reading, readDates } from "../rows/reading";
import { NO_DAY } from "../records";
import { readResultColumn, RESULT_CODE, type ResultWords } from "../cells/result-words";
import type { Staged } from "./staged";
import { displayOf, keyOf } from "../cells/words";

/** The rules of the codes that a column of ids may hold, by the key of the column. */
const ID_RULES = {
  child: new Map<number, string>([
    [ID_CODE.blank, "child-blank"],
    [ID_CODE.unknown, "child-unknown"],
    [ID_CODE.leftOut, "child-left-out"],
    [ID_CODE.error, "cell-error"],
    [ID_CODE.noValue, "cell-no-value"],
    [ID_CODE.date, "id-is-date"],
  ]),
  skill: new Map<number, string>([
    [ID_CODE.blank, "skill-blank"],
    [ID_CODE.unknown, "skill-unknown"],
    [ID_CODE.leftOut, "skill-left-out"],
    [ID_CODE.error, "cell-error"],
    [ID_CODE.noValue, "cell-no-value"],
    [ID_CODE.date, "id-is-date"],
  ]),
};

const RESULT_RULES = new Map<number, string>([
  [RESULT_CODE.blank, "result-blank"],
  [RESULT_CODE.unknown, "result-unknown"],
  [RESULT_CODE.error, "cell-error"],
  [RESULT_CODE.noValue, "cell-no-value"],
  [RESULT_CODE.leftOut, "result-left-out"],
]);

export interface Lookups {
  readonly child: KeyLookup;
  readonly skill: KeyLookup;
  readonly observers: ObserverList;
  readonly words: ResultWords;
}

/** Reads a long Observations table column by column, and stages the rows whose cells can be read. */
export function readObservations(reading: Reading, block: Block, tally: Tally, lookups: Lookups, staged: Staged): void {
  const at = (key: string) => block.columns.get(key) as number;
  const child = childrenOf(block, lookups.child);
  const skill = readIdColumn(block.grid, at("skill"), block.rows, lookups.skill);
  const day = readDates(reading, block, "date", at("date"), { strict: true }).days;
  const result = readResultColumn(block.grid, at("result"), block.rows, lookups.words);
  const observer = readIdColumn(block.grid, block.columns.get("observer"), block.rows, lookups.observers.lookup);
  const entered = enteredDays(reading, block);
  for (const each of entered ?? []) if (isDay(each)) staged.lastEntered = Math.max(staged.lastEntered, each);
  const source = staged.sources.push({ block, tally }) - 1;
  staged.reserve(block.rows.length);
  for (let i = 0; i < block.rows.length; i += 1) {
    const c = child[i] as number;
    const s = skill[i] as number;
    const d = day[i] as number;
    const r = result[i] as number;
    if (c < 0 || s < 0 || !isDay(d) || r >= RESULT_CODE.blank) {
      listRow(reading, block, tally, block.rows[i] as number, c, s, d, r);
      continue;
    }
    const n = staged.length;
    staged.child[n] = c;
    staged.skill[n] = s;
    staged.day[n] = d;
    staged.result[n] = r;
    staged.observer[n] = usable(reading, block, i, observer[i] as number);
    staged.entered[n] = entered ? usableDay(reading, block, i, entered[i] as number) : NO_DAY;
    staged.source[n] = source;
    staged.row[n] = block.rows[i] as number;
    staged.column[n] = at("result");
    staged.length = n + 1;
  }
}

/** The child of each row: by its column, or by the name of the sheet where that was settled. */
export function childrenOf(block: Block, lookup: KeyLookup): Int32Array {
  const named = block.constants.get("child");
  if (named === undefined) return readIdColumn(block.grid, block.columns.get("child"), block.rows, lookup);
  return new Int32Array(block.rows.length).fill(lookup(keyOf(named), named));
}

/** The rule of the code of a child or skill cell. */
export function idRule(column: "child" | "skill", code: number): string {
  return ID_RULES[column].get(code) as string;
}

function enteredDays(reading: Reading, block: Block): Int32Array | null {
  const column = block.columns.get("entered");
  return column === undefined ? null : readDates(reading, block, "entered", column, { strict: false }).days;
}

/** Lists every cell for which the row is left out; the row counts once, under the first. */
function listRow(
  reading: Reading,
  block: Block,
  tally: Tally,
  row: number,
  c: number,
  s: number,
  d: number,
  r: number,
): void {
  const rules: [rule: string, column: string][] = [];
  if (c < 0) rules.push([idRule("child", c), "child"]);
  if (s < 0) rules.push([idRule("skill", s), "skill"]);
  if (!isDay(d)) rules.push([dateRule(d), "date"]);
  if (r >= RESULT_CODE.blank) rules.push([RESULT_RULES.get(r) as string, "result"]);
  tally.leave(rules[0]?.[0] as string);
  for (const [rule, column] of rules) {
    if ((d === DATE_CODE.swapped && column === "date") || rule === "result-left-out") continue;
    reading.findings.cell(rule, block, row, block.columns.get(column) ?? block.range.left);
  }
}

function usable(reading: Reading, block: Block, i: number, observer: number): number {
  if (observer >= ID_CODE.blank) return observer;
  reading.findings.cell("cell-not-read", block, block.rows[i] as number, block.columns.get("observer") as number);
  return -1;
}

function usableDay(reading: Reading, block: Block, i: number, entered: number): number {
  if (isDay(entered)) return entered;
  if (entered === DATE_CODE.blank || entered === DATE_CODE.swapped) return NO_DAY;
  reading.findings.cell("cell-not-read", block, block.rows[i] as number, block.columns.get("entered") as number);
  return NO_DAY;
}

/** The observers, numbered as they first appear. */
export class ObserverList {
  readonly names: string[] = [];
  private readonly indexOf = new Map<string, number>();

  readonly lookup: KeyLookup = (key, text) => {
    const index = this.indexOf.get(key) ?? this.names.push(displayOf(text)) - 1;
    this.indexOf.set(key, index);
    return index;
  };
}
