import { CELL, type Grid } from "../../workbook/cells";
import { parseDateText } from "../cells/date-text";
import { resultOf } from "../cells/result-words";
import { headingKey, isBlankText, keyOf } from "../cells/words";
import { isFewEnough, LOOKS_LIKE_ID } from "../headings/can-group";
import type { ContentKind } from "./understanding";

export interface Content {
  readonly kind: ContentKind;
  readonly filled: number;
}

const MOSTLY = 0.8;
const MOST_VALUES = 40;
const LONGEST_NAME = 40;
const LONGEST_ID = 24;
const LONGEST_WORD = 14;
const MOST_SCORES = 6;
const YES_NO = new Set(["yes", "no", "y", "n", "true", "false", "si"]);

/** What the cells of a column hold, as far as a person who chooses its meaning has to know. No text of a cell is kept. */
export function contentOf(grid: Grid, column: number, rows: Int32Array): Content {
  const counts = countColumn(grid, column, rows);
  return { kind: kindOf(counts), filled: counts.filled };
}

interface Counts {
  filled: number;
  dates: number;
  numbers: number;
  results: number;
  yesNo: number;
  longest: number;
  readonly values: Set<string>;
}

function countColumn(grid: Grid, column: number, rows: Int32Array): Counts {
  const counts: Counts = { filled: 0, dates: 0, numbers: 0, results: 0, yesNo: 0, longest: 0, values: new Set() };
  const cells = grid.columns[column];
  const byText = new Map<number, TextKind>();
  for (const row of cells ? rows : []) {
    const kind = cells?.kinds[row] ?? CELL.empty;
    const value = cells?.values[row] as number;
    if (kind === CELL.date) countOne(counts, "date", "", 0);
    else if (kind === CELL.number) countOne(counts, "number", String(value), 0);
    else if (kind === CELL.boolean) countOne(counts, "yes or no", String(value), 5);
    else if (kind === CELL.text) {
      const text = grid.strings[value] as string;
      const known = byText.get(value) ?? textKind(text);
      byText.set(value, known);
      if (known !== "blank") countOne(counts, known, keyOf(text), text.length);
    }
  }
  return counts;
}

type TextKind = "blank" | "date" | "number" | "result" | "yes or no" | "other";

function textKind(text: string): TextKind {
  if (isBlankText(text)) return "blank";
  if (parseDateText(text).kind !== "none") return "date";
  if (YES_NO.has(headingKey(text))) return "yes or no";
  if (resultOf(text) !== null) return "result";
  return /^[+-]?\d+([.,]\d+)?$/.test(text.trim()) ? "number" : "other";
}

function countOne(counts: Counts, kind: Exclude<TextKind, "blank">, key: string, length: number): void {
  counts.filled += 1;
  if (kind === "date") counts.dates += 1;
  else if (kind === "number") counts.numbers += 1;
  else if (kind === "result") counts.results += 1;
  else if (kind === "yes or no") counts.yesNo += 1;
  if (kind !== "date" && counts.values.size <= MOST_VALUES) counts.values.add(key);
  counts.longest = Math.max(counts.longest, length);
}

/** `0`, `1`, `2` again and again. */
function areScores(values: ReadonlySet<string>, filled: number): boolean {
  return values.size > 1 && values.size <= MOST_SCORES && values.size * 2 <= filled && [...values].every(isDigit);
}

function isDigit(value: string): boolean {
  return /^\d$/.test(value);
}

function kindOf({ filled, dates, numbers, results, yesNo, longest, values }: Counts): ContentKind {
  if (filled === 0) return "nothing";
  if (dates >= MOSTLY * filled) return "dates";
  if (yesNo >= MOSTLY * filled) return "yes or no";
  const words = filled - dates - numbers;
  const short = longest <= LONGEST_WORD && values.size <= 12 && (results + yesNo + dates) * 2 >= filled;
  if (results + yesNo > 0 && (results + yesNo + dates >= MOSTLY * filled || short)) return "results";
  if (numbers >= MOSTLY * filled) return areScores(values, filled) ? "scores" : "numbers";
  const isId = [...values].some((value) => LOOKS_LIKE_ID.test(value));
  if (words > 0 && !isId && longest <= LONGEST_NAME && isFewEnough(values.size, filled)) return "few words";
  return longest <= LONGEST_ID ? "ids or names" : "text";
}
